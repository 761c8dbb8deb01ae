import { describe, expect, it } from 'vitest'
import { fromWebAnnotations } from '../../../../../src/core/handoff/annotations/in/from-web-annotations.ts'
import { noteEdits } from '../../../../../src/core/handoff/annotations/in/note-edits.ts'
import type { Creator, Finding } from '../../../../../src/core/handoff/annotations/in/read-annotation.ts'
import { niUri } from '../../../../../src/core/handoff/annotations/model/ni-uri.ts'
import { applyEdit } from '../../../../../src/core/job/edits/edit.ts'
import { mintedFor } from '../../../../../src/core/job/ids/id-form.ts'
import { labelOf } from '../../../../../src/core/job/ids/label.ts'
import type { Job, Note } from '../../../../../src/core/job/model/types.ts'
import { inWords, reason } from '../../../../../src/core/words/core-words.ts'
import { seededMint } from '../../../job/ids/seeded-mint.ts'
import { aNote, HELLO, notedJob } from '../a-noted-job.ts'

function foundIn(change: Partial<Omit<Note, 'id'>>, wanted: string) {
  const { found } = finding(change, null, wanted)
  if (found === undefined) throw new Error('A note was found.')
  return found
}

function finding(
  change: Partial<Omit<Note, 'id'>> = {},
  creator: Creator | null = null,
  wanted?: string,
): Finding {
  const { id: _, by: __, ...note } = aNote()
  return { found: { note: { ...note, ...change }, creator, wanted }, remarks: [] }
}

const bringIn = (job: Job, findings: Finding[], by?: string) => {
  const { edits, remarks } = noteEdits(job, findings, by)
  const items = edits.flatMap((edit) => (edit.do === 'add-note' ? [edit.item] : []))
  return { edits, items, remarks }
}

describe('What annotations come to in a job', () => {
  it('are notes under the ids that they had, or the first free number', () => {
    const job = notedJob([aNote({ id: 'N1' }), aNote({ id: 'N3', text: 'Another' })])
    const found = [
      finding({ text: 'a' }, null, 'N7'),
      finding({ text: 'b' }),
      finding({ text: 'c' }, null, 'N3'),
      finding({ text: 'd' }, null, ''),
    ]
    const { items, remarks } = bringIn(job, found)
    expect(items.map(({ id, text }) => `${id} ${text}`)).toEqual(['N7 a', 'N2 b', 'N4 c', 'N5 d'])
    expect(remarks).toEqual([reason('annotation.id-taken', { id: 'N3', instead: 'N4' })])
  })

  it('are notes under ids that no other copy of the job gives, but for those that were given so already', () => {
    const mint = seededMint(7)
    const [elsewhere, there] = [seededMint(8)('note'), seededMint(9)('note')]
    const job = notedJob([aNote({ id: 'N1' }), aNote({ id: there, number: 4, text: 'Another' })])
    const { edits, notes, remarks } = noteEdits(
      job,
      [
        finding({ text: 'a' }, null, 'N7'),
        { found: { ...foundIn({ text: 'b' }, elsewhere), number: 12 }, remarks: [] },
        finding({ text: 'c' }, null, there),
        finding({ text: 'd' }, { name: 'E. Crank' }),
      ],
      undefined,
      mint,
    )
    const items = edits.flatMap((edit) => (edit.do === 'add-note' ? [edit.item] : []))
    expect(items.map((note) => `${labelOf(note)} ${note.text}`)).toEqual([
      'note 5 a',
      'note 12 b',
      'note 6 c',
      'note 7 d',
    ])
    expect(items[1]?.id).toBe(elsewhere)
    expect(remarks.map((remark) => inWords(remark))).toEqual([
      'Note 4 is in this job already and says something else: the other is note 6.',
    ])
    const people = edits.flatMap((edit) => (edit.do === 'add-person' ? [edit.item] : []))
    const minted = [...notes, ...people.map(({ id }) => id)].filter((id) => mintedFor(id) !== undefined)
    expect(minted).toHaveLength(5)
    expect(new Set([...minted, ...job.notes.map(({ id }) => id)]).size).toBe(7)
    const made = edits.reduce((before, edit) => applyEdit(before, edit).job, job)
    expect(made.notes).toHaveLength(6)
  })

  it.each<[string, Finding, boolean]>([
    ['the same in all that is said', finding({}, { name: 'A. Rivet' }), true],
    ['the same, and nothing of who or when', finding({ at: undefined }), true],
    ['at another time', finding({ at: '2026-03-02T09:30:00.000Z' }), false],
    ['by somebody else', finding({}, { name: 'B. Stay' }), false],
    ['about something', finding({ about: 'bore' }), false],
    ['elsewhere', finding({ outline: [] }), false],
  ])('a note that is %s is there already, or is not', (_, found, there) => {
    const { items, remarks } = bringIn(notedJob(), [found])
    expect(items).toHaveLength(there ? 0 : 1)
    expect(remarks).toEqual(there ? [reason('annotation.already-here', { notes: 1 })] : [])
  })

  it('one who is not of the job is added to its people, once, along with those named by an id alone', () => {
    const job: Job = { ...notedJob([aNote({ by: 'XY' })]), people: [] }
    const crank = { name: 'E. Crank', short: 'EC' }
    const { edits, items } = bringIn(job, [
      finding({ text: 'a' }, { name: 'ZZ', short: 'ZZ' }),
      finding({ text: 'b' }, crank),
      finding({ text: 'c' }, crank),
      finding({ text: 'd' }, { name: 'XY' }),
    ])
    expect(edits.flatMap((edit) => (edit.do === 'several' ? edit.edits : []))).toEqual(
      [
        { id: 'XY', name: 'XY' },
        { id: 'ZZ', name: 'ZZ' },
        { id: 'P1', name: 'E. Crank' },
      ].map((item) => ({ do: 'add-person', item })),
    )
    expect(items.map(({ by }) => by)).toEqual(['ZZ', 'P1', 'P1', 'XY'])
  })

  it('what is said of many is said once, with how many', () => {
    const remark = reason('annotation.markup')
    const { remarks } = bringIn(notedJob([]), [
      { remarks: [remark] },
      { remarks: [reason('annotation.empty-body'), remark, remark] },
    ])
    expect(remarks).toEqual([
      reason('annotation.times', { remark, times: 3 }),
      reason('annotation.empty-body'),
    ])
  })

  it('more people than a job can have are refused', () => {
    const strangers = (count: number) =>
      Array.from({ length: count }, (_, k) => finding({ text: `${k}` }, { name: `Stranger ${k}` }))
    expect(bringIn(notedJob([]), strangers(1000)).items).toHaveLength(1000)
    expect(() => bringIn(notedJob([]), strangers(1001))).toThrow(/more than 1000 people/)
  })
})

/** The least work of a few runs, in microseconds of the processor, which other programs do not add to. */
function leastWork(run: () => unknown): number {
  const work = Array.from({ length: 3 }, () => {
    const start = process.cpuUsage()
    run()
    const { user, system } = process.cpuUsage(start)
    return user + system
  })
  return Math.max(1, Math.min(...work))
}

const FEW = 50
const TIMES = 16
/**
 * What is done in proportion takes as long in one go as in sixteen parts, what goes by the square sixteen times as long;
 * machines are uneven.
 */
const GENEROUS = 5

describe('Sixteen times as much takes about as long as sixteen times the part', () => {
  const NOBODY = notedJob([])
  /** As many as said, each made from its number. */
  const made = <T>(count: number, make: (k: number) => T): T[] =>
    Array.from({ length: count }, (_, k) => make(k))
  const jobOf = (count: number, make: (k: number) => Partial<Note>): Job =>
    notedJob(made(count, (k) => aNote({ id: `N${k + 1}`, ...make(k) })))

  it.each<[string, (count: number) => () => unknown]>([
    [
      'new notes',
      (count) => {
        const findings = made(8 * count, (k) => finding({ text: `${k}` }, { name: 'B. Stay' }, `N${k}`))
        return () => noteEdits(NOBODY, findings, 'AR')
      },
    ],
    [
      'notes that are there already',
      (count) => {
        const findings = made(8 * count, (k) => finding({ text: `${k}` }))
        const there = jobOf(8 * count, (k) => ({ text: `${k}` }))
        return () => noteEdits(there, findings, undefined)
      },
    ],
    [
      'notes that are alike in all but when they were written, beside as many there',
      (count) => {
        const findings = made(8 * count, (k) => finding({ at: `a${k}` }))
        const there = jobOf(8 * count, (k) => ({ at: `b${k}` }))
        return () => noteEdits(there, findings, undefined)
      },
    ],
    [
      'notes whose ids are taken, up to twice their number',
      (count) => {
        const findings = made(8 * count, (k) => finding({ text: `${k}` }, null, 'N1'))
        const there = jobOf(8 * count, (k) => ({ id: `N${8 * count + k}` }))
        return () => noteEdits(there, findings, undefined)
      },
    ],
    ['corners of a path', (count) => svg('path', count)],
    ['corners of a polygon', (count) => svg('polygon', count)],
    ['groups in one another', (count) => outline(`<svg>${'<g>'.repeat(1000 * count)}</svg>`)],
    ['digits without an end', (count) => outline(`<svg><rect x="${'1'.repeat(1000 * count)}!"/></svg>`)],
    ['spaces after a number', (count) => outline(`<svg><rect x="1${' '.repeat(1000 * count)}!"/></svg>`)],
    [
      'spaces after a transform',
      (count) =>
        outline(
          `<svg><g transform="${'scale(1)'.repeat(40 * count)}${' '.repeat(1000 * count)}"><rect/></g></svg>`,
        ),
    ],
    [
      'a transform without an end',
      (count) => outline(`<svg><g transform="${'scale(1) '.repeat(80 * count)}("><rect/></g></svg>`),
    ],
  ])('for %s', (_, prepare) => {
    const [few, many] = [prepare(FEW), prepare(TIMES * FEW)]
    const inParts = (): void => {
      for (let part = 0; part < TIMES; part++) few()
    }
    leastWork(inParts)
    expect(leastWork(many) / leastWork(inParts)).toBeLessThan(GENEROUS)
  })

  function svg(shape: 'path' | 'polygon', count: number): () => unknown {
    const points = made(60 * count, (k) => `${k % 997}.125 ${k % 1009}.5`).join(' ')
    return outline(`<svg><${shape} ${shape === 'path' ? `d="M${points}` : `points="${points}`}"/></svg>`)
  }

  function outline(value: string): () => unknown {
    const target = { source: niUri(HELLO), selector: { type: 'SvgSelector', value } }
    const text = JSON.stringify({ type: 'Annotation', bodyValue: '', target })
    return () => fromWebAnnotations(text, NOBODY)
  }
})
