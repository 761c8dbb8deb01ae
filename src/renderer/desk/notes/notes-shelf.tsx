import './notes-shelf.css'
import { useEffect } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { takeUp } from '../../bench/choose.ts'
import { bringInSight } from '../../camera/look-at.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { NOTE_KEY } from '../in-hand/tool-keys.ts'
import { CarryNotes } from './carry-notes.tsx'
import { NotesList } from './notes-list.tsx'

/** The notes of the job, at the foot of the desk whatever the station. */
export function NotesShelf() {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const sheet = useBench((bench) => bench.sheet)
  const noting = useBench(({ picks: { tool } }) => tool.kind === 'note')
  useNoteInSight()
  if (job === undefined) return null
  return (
    <div className="notes-shelf">
      <Section
        title={`Notes (${job.notes.length})`}
        fold="shut"
        aside={
          <Button
            kind="quiet"
            icon="note"
            shortcut={NOTE_KEY}
            disabled={!writable || sheet === null || noting}
            onPress={() => {
              takeUp({ kind: 'note' })
              toTheSheet()
            }}
          >
            Write a note
          </Button>
        }
      >
        <NotesList job={job} />
        <CarryNotes job={job} writable={writable} />
      </Section>
    </div>
  )
}

/** Brings the region of a note that is chosen into sight. */
function useNoteInSight(): void {
  const note = useBench(({ selection }) => (selection?.kind === 'note' ? selection.id : null))
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    const chosen = useBench.getState().opened?.job.notes.find(({ id }) => id === note)
    if (chosen !== undefined && chosen.sheet === sheet) bringInSight(chosen.outline)
  }, [note, sheet])
}
