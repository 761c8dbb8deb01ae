import { labelOfId } from '../../../core/job/ids/label.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, takeUp } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { HistorySection } from '../../history/history-section.tsx'
import { Button } from '../../parts/button.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { Section } from '../../parts/section.tsx'
import { useKept } from '../../parts/use-kept.ts'
import { reason } from '../../words/window-words.ts'
import { Remove } from '../keeping/remove.tsx'
import { AboutField } from './about-field.tsx'
import { aboutEdit } from './note-edits.ts'
import { aboutOf, noteNumber, noteSignature } from './note-words.ts'

/** A note: what it says, who wrote it and when, what it is about. */
export function NoteCard({ id }: { id: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const note = job?.notes.find((one) => one.id === id)
  const itsAbout = useKept(note?.about ?? null, (now) => makeEdit(aboutEdit(id, now)))
  if (job === undefined || note === undefined) return null
  const about = aboutOf(job, note.about)
  const sheet = job.sheets.find((one) => one.id === note.sheet)
  const selection = about?.selection ?? null
  return (
    <article aria-label={`Note ${noteNumber(note)}`}>
      <div className="desk-head">
        <h2 className="desk-station">Note {noteNumber(note)}</h2>
        <p className="desk-missing">{noteSignature(job, note)}</p>
      </div>
      <Section title="What it says">
        <SavedField
          label="Text"
          lines={6}
          value={note.text}
          disabled={!writable}
          check={(text) => (text.trim() === '' ? reason('written.no-note') : null)}
          onSave={(text) => makeEdit({ do: 'change-note', id, set: { text } })}
        />
        {writable ? (
          <AboutField
            job={job}
            value={itsAbout.shown}
            onChange={(now) => {
              if (now !== itsAbout.shown) void itsAbout.keep(now)
            }}
          />
        ) : (
          about !== null && <p>About: {about.words}</p>
        )}
        {selection !== null && about !== null && (
          <div className="block-row">
            <Button kind="quiet" onPress={() => choose(selection)}>
              Show {about.words}
            </Button>
          </div>
        )}
      </Section>
      <Section title="Where it is">
        <dl className="block-facts">
          <dt>Sheet</dt>
          <dd>{sheet?.title ?? labelOfId(note.sheet)}</dd>
          {note.annotation !== undefined && (
            <>
              <dt>Brought in from</dt>
              <dd>{note.annotation}</dd>
            </>
          )}
        </dl>
        {note.outline.length === 0 && <p className="block-soft">It is about the sheet as a whole.</p>}
        <div className="block-row">
          <Button
            icon="note"
            disabled={!writable}
            onPress={() => {
              takeUp({ kind: 'note', note: id })
              toTheSheet()
            }}
          >
            Draw its region again
          </Button>
        </div>
        <Remove
          words="Remove this note"
          writable={writable}
          because={null}
          onRemove={() => void makeEdit({ do: 'remove-note', id })}
        />
      </Section>
      <HistorySection of={{ kind: 'note', id }} />
    </article>
  )
}
