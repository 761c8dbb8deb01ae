import './notes-shelf.css'
import { useBench } from '../../bench/bench-store.ts'
import { takeUp } from '../../bench/choose.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { toTheSheet } from '../to-the-sheet.ts'
import { CarryNotes } from './carry-notes.tsx'
import { NotesList } from './notes-list.tsx'
import { useNoteInSight } from './use-note-in-sight.ts'

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
