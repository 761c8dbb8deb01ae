import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromWebAnnotations } from '../../../../src/core/handoff/annotations/in/from-web-annotations.ts'
import { toWebAnnotations } from '../../../../src/core/handoff/annotations/out/to-web-annotations.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job, Note } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { aNote, notedJob } from './a-noted-job.ts'
import { shortcomings } from './out/required-properties.ts'

const withEdits = (job: Job, text: string): Job => {
  const { edits } = fromWebAnnotations(text, job)
  return edits.reduce((before, edit) => applyEdit(before, edit).job, job)
}

/** A coordinate on or about a page, to any fineness; a minus before nothing is not kept in a job. */
const coordinate = fc.double({ min: -1e7, max: 1e7, noNaN: true }).map((x) => x + 0)

const oddText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.constantFrom(
    '<script>alert("3/8")</script>',
    '&lt;b&gt; & "quoted" \'so\'',
    'קוטר פנימי 3/8',
    'العرض الكلي',
    '⌀ 🛠️ 👩🏽‍🔧',
    '\uD800 half a pair',
    'two\nlines\r\nand a tab\t',
  ),
)

const note = (id: string): fc.Arbitrary<Note> =>
  fc
    .record(
      {
        sheet: fc.constantFrom('S1', 'S2', 'S3'),
        outline: fc.array(fc.tuple(coordinate, coordinate), { maxLength: 60 }),
        text: oddText,
        by: fc.constantFrom('AR', 'BS'),
        at: fc.oneof(
          fc.constantFrom('2026-03-01T09:30:00Z', '2026-03-01T09:30:00+01:00', 'a Tuesday', ''),
          oddText,
        ),
        about: fc.oneof(fc.constantFrom('drum_od', 'M12', ''), oddText),
        annotation: fc.webUrl(),
        colour: fc
          .jsonValue({ maxDepth: 3 })
          .filter((value) => !JSON.stringify(value).includes('"__proto__":')),
      },
      { requiredKeys: ['sheet', 'outline', 'text'] },
    )
    .map((rest) => JSON.parse(JSON.stringify({ id, ...rest })) as Note)

const notes = fc
  .uniqueArray(
    fc.oneof(
      fc.nat(99).map((n) => `N${n}`),
      oddText.filter((id) => id !== ''),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .chain((ids) => fc.tuple(...ids.map(note)))

describe('Notes go out as Web Annotations and come back as they were', () => {
  it('whatever is in them', () => {
    fc.assert(
      fc.property(notes, (all) => {
        const job = notedJob(all)
        const text = toWebAnnotations(job)
        const { edits, remarks, elsewhere } = fromWebAnnotations(text, { ...job, notes: [] })
        expect({ remarks, elsewhere }).toEqual({ remarks: [], elsewhere: [] })
        expect(edits.map((edit) => (edit.do === 'add-note' ? edit.item : edit))).toEqual(all)
      }),
      { numRuns: 400 },
    )
  })

  it('with all that the Recommendation requires', () => {
    fc.assert(
      fc.property(notes, (all) => {
        expect(shortcomings(JSON.parse(toWebAnnotations(notedJob(all))))).toEqual([])
      }),
      { numRuns: 400 },
    )
  })

  it('and the job that they come back to is a sound one', () => {
    const job = notedJob([aNote(), aNote({ id: 'N2', sheet: 'S2', about: 'bore', text: '' })])
    const again = withEdits({ ...job, notes: [] }, toWebAnnotations(job))
    expect(readJob(JSON.parse(JSON.stringify(again)))).toEqual(job)
  })

  it('and those that are there already are not there twice', () => {
    const job = notedJob()
    const { edits, remarks } = fromWebAnnotations(toWebAnnotations(job), job)
    expect(edits).toEqual([])
    expect(remarks.map(inWords)).toEqual(['One note was in this job already and stayed as before.'])
  })

  it('and where a note of that id says something else, both are there', () => {
    const job = notedJob([aNote({ text: 'Another hand wrote this.' })])
    const { notes: ids, remarks } = fromWebAnnotations(toWebAnnotations(notedJob()), job)
    expect(ids).toEqual(['N2'])
    expect(remarks.map(inWords)).toEqual([
      'Note "N1" is in this job already and says something else: the other is N2.',
    ])
  })

  it('to another job too, with the people who wrote them', () => {
    const other: Job = { ...notedJob([]), people: [{ id: 'AR', name: 'Anna Rose' }] }
    const job = withEdits(other, toWebAnnotations(notedJob()))
    expect(job.people.map(({ name }) => name)).toEqual(['Anna Rose', 'A. Rivet'])
    const [note] = job.notes
    expect(job.people.find(({ id }) => id === note?.by)?.name).toBe('A. Rivet')
  })

  it('but a job without notes has none to hand on', () => {
    expect(() => toWebAnnotations(notedJob([]))).toThrow('This job has no notes')
  })
})
