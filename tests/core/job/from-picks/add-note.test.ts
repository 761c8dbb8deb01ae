import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import { addNote } from '../../../../src/core/job/from-picks/add-note.ts'
import { seededMint } from '../ids/seeded-mint.ts'
import { winchJob } from '../winch-job.ts'

const outline = [pixel(10, 10), pixel(50, 10), pixel(50, 30), pixel(10, 30)]

it('A note is kept under the next number, and can be taken back', () => {
  const job = winchJob()
  const mint = seededMint(3)
  const [sheet] = job.sheets
  if (sheet === undefined) throw new Error('The job has a sheet.')
  const said = { sheet: sheet.id, outline, text: 'Worn.' }
  const { edit, id } = addNote(job, { ...said, about: 'drum_od' }, mint)
  const applied = applyEdit(job, edit)
  expect(job.notes.some((note) => note.id === id)).toBe(false)
  expect(applied.job.notes.at(-1)).toEqual({ id, number: 1 + job.notes.length, ...said, about: 'drum_od' })
  expect(applyEdit(applied.job, applied.inverse).job).toEqual(job)
  expect(applyEdit(job, addNote(job, { ...said, about: '' }, mint).edit).job.notes.at(-1)).not.toHaveProperty(
    'about',
  )
})
