import type { Job, Sheet } from '../../../core/job/model/types.ts'
import { whatIsOn } from '../../../core/job/sheets/on-sheet.ts'
import { removeSheet } from '../../../core/job/sheets/remove-sheet.ts'
import { makeThen } from '../../bench/edits.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { goesInWords } from './goes-in-words.ts'

interface RemoveSheetDialogProps {
  job: Job
  sheet: Sheet
  onClose: () => void
}

/** Says what goes with a sheet before it is removed. */
export function RemoveSheetDialog({ job, sheet, onClose }: RemoveSheetDialogProps) {
  const goes = goesInWords(whatIsOn(job, sheet.id))
  const remove = () => {
    onClose()
    void makeThen((now) =>
      now.sheets.some(({ id }) => id === sheet.id) ? { edit: removeSheet(now, sheet.id) } : null,
    )
  }
  return (
    <Dialog
      title={`Remove ${sheet.title}?`}
      open
      onClose={onClose}
      actions={
        <>
          <Button onPress={onClose}>Cancel</Button>
          <Button kind="danger" icon="bin" onPress={remove}>
            Remove it
          </Button>
        </>
      }
    >
      {goes.length === 0 ? (
        <p>Nothing is on it.</p>
      ) : (
        <>
          <p>With it goes:</p>
          <ul className="remove-sheet-goes">
            {goes.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      <p>Its scan stays in the job’s folder. One undo brings all of it back.</p>
    </Dialog>
  )
}
