import { useEffect, useRef, useState } from 'react'
import type { FromWebAnnotations } from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import { useBench } from '../../bench/bench-store.ts'
import { tell } from '../../bench/notices.ts'
import { Button } from '../../parts/button.tsx'
import { Dialog } from '../../parts/dialog.tsx'
import { Picker } from '../../parts/picker.tsx'
import { inWords, sentenceOf } from '../../words/window-words.ts'
import { keepNotes, readNotes } from './bring-in-notes.ts'

const LEAVE = ' '
/** So many remarks are shown; a person reads no more. */
const SHOWN = 40

/** What a file of annotations holds for this job, before it is brought in; a person says where homeless notes go. */
export function BroughtIn({ file, onDone }: { file: File; onDone: () => void }) {
  const job = useBench((bench) => bench.opened?.job)
  const [read, setRead] = useState<FromWebAnnotations | null>(null)
  const [sheet, setSheet] = useState(LEAVE)
  /** Asked once: a picture that is no sheet here was there. */
  const [homeless, setHomeless] = useState(0)
  const done = useRef(onDone)
  done.current = onDone
  useEffect(() => {
    const before = useBench.getState().opened?.job
    if (before === undefined) return
    let wanted = true
    void readNotes(file, before, sheet === LEAVE ? undefined : sheet).then((result) => {
      if (!wanted) return
      if ('refused' in result) {
        tell('failed', sentenceOf(result.refused))
        done.current()
        return
      }
      setHomeless((most) => Math.max(most, result.done.elsewhere.length))
      setRead(result.done)
    })
    return () => {
      wanted = false
    }
  }, [file, sheet])
  if (read === null || job === undefined) return null
  const bringIn = async () => {
    if (!(await keepNotes(read))) return
    tell(
      'told',
      read.notes.length === 1 ? 'One note was brought in.' : `${read.notes.length} notes were brought in.`,
    )
    onDone()
  }
  return (
    <Dialog
      title={`Notes of ${file.name}`}
      open
      onClose={onDone}
      actions={
        <>
          <Button onPress={onDone}>Cancel</Button>
          <Button kind="main" disabled={read.notes.length === 0} onPress={() => void bringIn()}>
            Bring in
          </Button>
        </>
      }
    >
      <p aria-live="polite">
        {read.notes.length === 0
          ? 'There is nothing in it for this job.'
          : read.notes.length === 1
            ? 'One note would be added.'
            : `${read.notes.length} notes would be added.`}
      </p>
      {homeless > 0 && (
        <Picker
          label="Notes on pictures that no sheet is of"
          value={sheet}
          options={[
            { id: LEAVE, label: 'Do not bring them in' },
            ...job.sheets.map(({ id, title }) => ({ id, label: `Put them on “${title}”` })),
          ]}
          onChange={setSheet}
        />
      )}
      {read.remarks.length > 0 && (
        <ul className="block-words" aria-label="What is to be known">
          {read.remarks
            .slice(0, SHOWN)
            .map(inWords)
            .map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          {read.remarks.length > SHOWN && <li>And {read.remarks.length - SHOWN} more of the same kind.</li>}
        </ul>
      )}
    </Dialog>
  )
}
