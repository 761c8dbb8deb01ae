import { useState } from 'react'
import type { Job, Sheet } from '../../../core/job/model/types.ts'
import { Button } from '../../parts/button.tsx'
import { moveSheet } from './move-sheet.ts'
import { RemoveSheetDialog } from './remove-sheet-dialog.tsx'
import { beginReplacing } from './replacing.ts'

/** What can be done with the sheet on the bench: its place in the set, its scan, and whether it stays. */
export function SheetTools({ job, sheet, writable }: { job: Job; sheet: Sheet; writable: boolean }) {
  const [removing, setRemoving] = useState(false)
  const at = job.sheets.indexOf(sheet)
  return (
    <div className="block-row">
      {job.sheets.length > 1 && (
        <>
          <Button disabled={!writable || at === 0} onPress={() => moveSheet(sheet.id, at - 1)}>
            Move up
          </Button>
          <Button
            disabled={!writable || at === job.sheets.length - 1}
            onPress={() => moveSheet(sheet.id, at + 1)}
          >
            Move down
          </Button>
        </>
      )}
      <Button disabled={!writable} onPress={() => beginReplacing(sheet.id)}>
        A better scan…
      </Button>
      <Button kind="danger" icon="bin" disabled={!writable} onPress={() => setRemoving(true)}>
        Remove this sheet…
      </Button>
      {removing && <RemoveSheetDialog job={job} sheet={sheet} onClose={() => setRemoving(false)} />}
    </div>
  )
}
