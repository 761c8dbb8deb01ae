import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Job, Note } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, putDown, showSheet } from '../../bench/choose.ts'
import { TextField } from '../../parts/text-field.tsx'
import { notesFound } from './note-search.ts'
import { aboutOf, noteNumber, noteSignature } from './note-words.ts'

/** The notes of a job, found by words as they are typed; pressing one goes there. */
export function NotesList({ job }: { job: Job }) {
  const [sought, setSought] = useState('')
  const chosen = useBench(({ selection }) => (selection?.kind === 'note' ? selection.id : null))
  if (job.notes.length === 0) {
    return (
      <p className="block-soft">
        A note is pinned to a region of a sheet: what is worn, what was written over, what somebody should
        look at again. It goes with the job.
      </p>
    )
  }
  const found = notesFound(job, sought)
  return (
    <>
      <div>
        <TextField
          label="Find in notes"
          value={sought}
          onChange={setSought}
          placeholder="A word, a person, a dimension"
          onEscape={() => setSought('')}
        />
        <p className="block-soft notes-found" aria-live="polite">
          {sought.trim() === '' ? '' : `${found.length} of ${job.notes.length} found`}
        </p>
      </div>
      <ul className="notes-list" aria-label="Notes">
        {found.map((note) => (
          <li key={note.id}>
            <NoteLine job={job} note={note} chosen={note.id === chosen} />
          </li>
        ))}
      </ul>
    </>
  )
}

function NoteLine({ job, note, chosen }: { job: Job; note: Note; chosen: boolean }) {
  const about = aboutOf(job, note.about)
  const sheet = job.sheets.length > 1 ? job.sheets.find(({ id }) => id === note.sheet)?.title : undefined
  const line = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (chosen) line.current?.scrollIntoView({ block: 'nearest' })
  }, [chosen])
  return (
    <Button
      ref={line}
      className="block-one-of notes-list-one"
      aria-current={chosen || undefined}
      onPress={() => {
        putDown()
        choose({ kind: 'note', id: note.id })
        void showSheet(note.sheet)
      }}
    >
      <span className="notes-list-number" aria-hidden="true">
        {noteNumber(note)}
      </span>
      <span className="notes-list-text" dir="auto">
        {note.text === '' ? 'Nothing is written' : note.text}
      </span>
      <span className="notes-list-soft">
        {[noteSignature(job, note), about?.words, sheet].filter((one) => one !== undefined).join(' · ')}
      </span>
    </Button>
  )
}
