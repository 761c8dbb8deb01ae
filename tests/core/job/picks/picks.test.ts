import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job, Mark, MarkPick } from '../../../../src/core/job/model/types.ts'
import { fieldAgainstPicks, firstPlaces, picksOf } from '../../../../src/core/job/picks/picks-of.ts'
import { listed, withPicks } from '../../../../src/core/job/picks/with-picks.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { writeJob } from '../../../../src/core/job/write-job.ts'
import { anyJob, mark, pickedAgain } from '../arbitrary-job.ts'
import { winchJob, winchJobOfVersion1 } from '../winch-job.ts'

const ada = { by: 'ada', at: '2026-03-09T10:05:00Z' }
const ben = { by: 'ben', at: '2026-03-10T09:00:00Z' }
const point: Mark = {
  id: 'M1',
  sheet: 's1',
  ...ada,
  how: 'hand',
  sigma: 1,
  kind: 'point',
  pixel: pixel(3, 4),
}
const thrice: Mark = { ...point, repeats: [pixel(5, 6), pixel(7, 8)], repeatedBy: [ben] }

/** A mark of any kind that people of a job picked any number of times. */
const anyMark = fc.gen().map((draw): Mark | undefined => {
  const job = anyJob(draw)
  const made = mark(draw, job, 'M99')
  return made && pickedAgain(draw, job, made)
})

describe('the picks of a mark', () => {
  it('are the first, as the mark says it, and then its repeats, each with who and when', () => {
    expect(picksOf(thrice)).toEqual([
      { pixel: [3, 4], ...ada, how: 'hand', sigma: 1 },
      { pixel: [5, 6], ...ben },
      { pixel: [7, 8] },
    ])
    expect(firstPlaces(thrice)).toEqual([[3, 4]])
  })

  it('of a line are each the whole of it', () => {
    const [a, b, c] = [pixel(0, 0), pixel(9, 1), pixel(9, 2)]
    const line: Mark = {
      id: 'L',
      sheet: 's1',
      how: 'stroke',
      sigma: 0.1,
      kind: 'line',
      pixels: [a, b],
      repeats: [[a, c]],
    }
    expect(picksOf(line)).toEqual([{ pixels: [a, b], how: 'stroke', sigma: 0.1 }, { pixels: [a, c] }])
    expect(firstPlaces(line)).toEqual([a, b])
  })

  it('stand in the fields of old as well', () => {
    const picks: MarkPick[] = [
      { pixel: pixel(1, 2), ...ben, sitting: 'forenoon', how: 'stroke', sigma: 0.2 },
      { pixel: pixel(3, 4) },
      { pixel: pixel(5, 6), ...ada, sitting: 'afternoon', how: 'hand', sigma: 1 },
    ]
    const { id, sheet } = point
    expect(withPicks(point, picks)).toEqual({
      id,
      sheet,
      kind: 'point',
      pixel: [1, 2],
      ...ben,
      sitting: 'forenoon',
      how: 'stroke',
      sigma: 0.2,
      repeats: [
        [3, 4],
        [5, 6],
      ],
      repeatedBy: [{}, { ...ada, sitting: 'afternoon', how: 'hand', sigma: 1 }],
      picks,
    })
    expect(withPicks(thrice, picks.slice(0, 1))).not.toHaveProperty('repeats')
    expect(() => withPicks(point, [])).toThrow(RangeError)
  })

  it('are the same read from the fields of old, from the list, and from both', () => {
    let of = 0
    fc.assert(
      fc.property(anyMark, (made) => {
        fc.pre(made !== undefined)
        of = Math.max(of, picksOf(made).length)
        const whole = listed(made)
        expect(fieldAgainstPicks(whole)).toBeNull()
        expect(whole.picks).toEqual(picksOf(made))
        expect(picksOf(whole)).toBe(whole.picks)
        expect(listed(whole)).toBe(whole)
        const { picks: _, ...old } = withPicks(whole, picksOf(whole))
        expect(picksOf(old as Mark)).toEqual(picksOf(made))
        expect(withPicks(old as Mark, picksOf(made))).toEqual(withPicks(made, picksOf(made)))
      }),
      { numRuns: 500 },
    )
    expect(of).toBe(4)
  })

  it('are as the fields say where a program that does not know of the list has changed these', () => {
    const moved = { ...listed(thrice), pixel: pixel(30, 40) } as Mark
    expect(picksOf(moved).map((pick) => 'pixel' in pick && pick.pixel)).toEqual([
      [30, 40],
      [5, 6],
      [7, 8],
    ])
    const job = winchJob()
    const text = writeJob({ ...job, marks: [moved, ...job.marks] })
    expect(readJob(JSON.parse(text)).marks[0]).toEqual({ ...moved, picks: picksOf(moved) })
  })

  it('are read by nobody but their reader', () => {
    const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.tsx?$/.test(file),
    )
    const readers = files.filter(
      (file) =>
        !/^core\/(job\/picks|words)\//.test(file) &&
        /\.repeats\b|\.repeatedBy\b/.test(readFileSync(join('src', file), 'utf8')),
    )
    expect(readers).toEqual([])
  })
})

/** All of it frozen, so that nothing can be changed in it. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null)
    for (const inner of Object.values(Object.freeze(value))) frozen(inner)
  return value
}

describe('a job of version 1', () => {
  it('is read as one of version 2 whose marks list their picks, and is itself left as it is', () => {
    const old = frozen(winchJobOfVersion1())
    const read = readJob(old)
    expect(read).toEqual(winchJob())
    expect(read.version).toBe(2)
    expect(read.marks.find(({ id }) => id === 'B')?.picks).toEqual([
      { pixel: [500, 20], how: 'hand', sigma: 1 },
      { pixel: [501, 20.25] },
    ])
    expect(old).toEqual(winchJobOfVersion1())
  })

  it('keeps its fields as they are: what is written has the shapes of version 1, and more', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const { marks, ...rest } = anyJob(draw)
        const old = { ...rest, version: 1, marks: marks.map(({ picks: _, ...fields }) => fields) }
        const before = JSON.parse(JSON.stringify(old))
        const written = JSON.parse(writeJob(readJob(frozen(before))))
        expect(written.version).toBe(2)
        const bare = written.marks.map(({ picks: _, ...fields }: Mark) => fields)
        expect({ ...written, version: 1, marks: bare }).toEqual(before)
      }),
      { numRuns: 200 },
    )
  })
})

/** The winch job with another mark A. */
const withMark = (change: object): Job => {
  const job = winchJob()
  return { ...job, marks: job.marks.map((one) => (one.id === 'A' ? ({ ...one, ...change } as Mark) : one)) }
}

describe('a document whose picks and fields say different things', () => {
  it.each<[string, object]>([
    ['pixel', { pixel: [11, 20] }],
    ['sigma', { sigma: 2 }],
    ['how', { how: 'stroke' }],
    ['by', { by: 'ben' }],
    ['repeats', { repeats: [[1, 1]] }],
    ['at', { picks: [{ pixel: [10.5, 20.5], by: 'ada', at: '2026-01-01T00:00:00Z' }] }],
  ])('of %s is refused, naming the mark and what to do', (field, change) => {
    expect(() => readJob(withMark(change))).toThrow(JobError)
    expect(() => readJob(withMark(change))).toThrow(
      `mark "A" is not sound: its "${field}" and its "picks" do not say the same: take away "picks", and they are made anew of the other fields, or make the two say the same.`,
    )
    expect(readJob(withMark({ ...change, picks: undefined })).marks[0]?.picks).toHaveLength(
      field === 'repeats' ? 2 : 1,
    )
  })

  it('is not one whose picks leave out what a field says', () => {
    const { marks } = readJob(withMark({ picks: [{ pixel: [10.5, 20.5] }] }))
    expect(marks[0]?.picks).toEqual([{ pixel: [10.5, 20.5], by: 'ada', how: 'hand', sigma: 1 }])
  })

  it('nor one whose repeats say more in the list', () => {
    const said = { pixel: pixel(1, 1), how: 'hand' as const, sigma: 2, sitting: 'forenoon' }
    const picks = [{ pixel: [10.5, 20.5] }, said]
    const { marks } = readJob(withMark({ repeats: [[1, 1]], picks }))
    expect(marks[0]?.picks?.[1]).toEqual(said)
  })
})

describe('a change to a mark', () => {
  const job = readJob({ ...winchJob(), marks: [...winchJob().marks, { ...thrice, sitting: 'forenoon' }] })
  const changed = (edit: Edit): Mark => {
    const { job: after, inverse } = applyEdit(job, readEdit(edit))
    const back = applyEdit(after, readEdit(inverse))
    expect(back.job).toEqual(job)
    expect(writeJob(back.job)).toBe(writeJob(job))
    expect(applyEdit(back.job, readEdit(back.inverse)).job).toEqual(after)
    expect(readJob(after)).toEqual(after)
    return after.marks.at(-1) as Mark
  }

  it('that sets the fields of old makes its picks anew', () => {
    const set = { pixel: pixel(1, 1), sigma: 2, repeats: [pixel(9, 9)] }
    expect(changed({ do: 'change-mark', id: 'M1', set }).picks).toEqual([
      { pixel: [1, 1], ...ada, sitting: 'forenoon', how: 'hand', sigma: 2 },
      { pixel: [9, 9], ...ben },
    ])
    expect(changed({ do: 'change-mark', id: 'M1', clear: ['repeats', 'repeatedBy', 'by'] }).picks).toEqual([
      { pixel: [3, 4], at: ada.at, sitting: 'forenoon', how: 'hand', sigma: 1 },
    ])
  })

  it('that sets the picks makes the fields of old anew', () => {
    const picks = [
      { pixel: pixel(1, 1), by: 'ben' },
      { pixel: pixel(2, 2), by: 'ada' },
    ]
    expect(changed({ do: 'change-mark', id: 'M1', set: { picks } })).toMatchObject({
      pixel: [1, 1],
      by: 'ben',
      repeats: [[2, 2]],
      repeatedBy: [{ by: 'ada' }],
    })
  })

  it('that sets both is refused where they say different things', () => {
    const set = { pixel: pixel(1, 1), picks: [{ pixel: pixel(2, 2) }] }
    expect(() => applyEdit(job, { do: 'change-mark', id: 'M1', set })).toThrow(/its "pixel" and its "picks"/)
    expect(changed({ do: 'change-mark', id: 'M1', set: { ...set, pixel: pixel(2, 2) } })).toMatchObject({
      pixel: [2, 2],
    })
  })

  it('that takes the picks away makes them anew, and one of its label leaves them', () => {
    expect(changed({ do: 'change-mark', id: 'M1', clear: ['picks'] })).toEqual(job.marks.at(-1))
    expect(changed({ do: 'change-mark', id: 'M1', set: { label: 'rivet' } }).picks).toEqual(
      job.marks.at(-1)?.picks,
    )
  })

  it('that picks it again adds to the list, with how, how surely and in which sitting', () => {
    const again = { pixel: pixel(4, 4), ...ben, sitting: 'evening', how: 'stroke', sigma: 0.1 } as const
    expect(changed({ do: 'repeat-pick', mark: 'M1', ...again }).picks?.at(-1)).toEqual(again)
  })
})
