import { useBench } from '../bench/bench-store.ts'
import { choose } from '../bench/choose.ts'
import { Dialog } from '../parts/dialog.tsx'
import { endNewDimension, useNewDimensionAsked } from './new-dimension-asked.ts'
import { NewDimensionForm } from './new-dimension-form.tsx'

/** Asks what a new dimension is that is not picked on the sheet. */
export function NewDimensionDialog() {
  const begun = useNewDimensionAsked((state) => state.begun)
  const job = useBench((bench) => bench.opened?.job)
  const unit = useBench((bench) => bench.unit ?? bench.opened?.job.unit ?? 'in')
  const writable = useBench((bench) => bench.opened?.writable === true)
  if (begun === null || job === undefined || !writable) return null
  return (
    <Dialog title="New dimension" open onClose={endNewDimension} firm>
      <NewDimensionForm
        job={job}
        unit={unit}
        begun={begun}
        onCancel={endNewDimension}
        onKept={(name) => {
          endNewDimension()
          choose({ kind: 'dimension', name })
        }}
      />
    </Dialog>
  )
}
