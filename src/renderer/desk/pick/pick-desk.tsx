import { useBench } from '../../bench/bench-store.ts'
import { isMeasure } from '../../picking/picked-marks.ts'
import { isComplete } from '../../picking/picks.ts'
import { isSlot } from '../../picking/tool.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { useViewUnderPicks } from '../in-hand/use-view-under-picks.ts'
import { viewAtWork } from '../in-hand/view-at-work.ts'
import { MeasureChoice } from './measure-choice.tsx'
import { MeasureForm } from './measure-form.tsx'
import { SlotForm } from './slot-form.tsx'

/** Station 3: what is measured, and what it comes to. */
export function PickDesk() {
  const last = useLastUsed(({ view }) => view)
  const view = useBench((bench) => viewAtWork(bench, last))
  const picks = useBench((bench) => bench.picks)
  useViewUnderPicks()
  if (isMeasure(picks) && isComplete(picks) && view !== undefined) {
    const Form = isSlot(picks.tool) ? SlotForm : MeasureForm
    return <Form picks={picks} view={view} />
  }
  return <MeasureChoice view={view} />
}
