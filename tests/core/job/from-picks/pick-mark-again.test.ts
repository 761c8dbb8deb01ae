import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import {
  pickAgain,
  putBackByHand,
  takeFoundAnew,
} from '../../../../src/core/job/from-picks/pick-mark-again.ts'
import type { UnnamedMark } from '../../../../src/core/job/from-picks/picked-mark.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job, Mark } from '../../../../src/core/job/model/types.ts'
import { listed } from '../../../../src/core/job/picks/with-picks.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'

const rough: Pixel[] = [pixel(10, 21), pixel(90, 19)]
const onLine: UnnamedMark & { kind: 'line' } = {
  how: 'stroke',
  kind: 'line',
  sigma: 0.06,
  stroke: { as: 'line', reading: 'centre', rough, width: 4.1, leftOut: [pixel(50, 22)] },
  pixels: [pixel(12, 20.01), pixel(50, 20.02), pixel(88, 19.99)],
}
const line: Mark = {
  id: 'M1',
  sheet: 'S1',
  ...onLine,
  repeats: [onLine.pixels],
  repeatedBy: [{}],
}
const point: Mark = { id: 'M1', sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(1, 1) }

function withLine(): Job {
  const job = newJob('Winch', 'mm')
  const scan = { file: 'winch.png', sha256: '0'.repeat(64), page: 1, width: 2000, height: 1500 }
  job.sheets.push({ id: 'S1', title: 'Winch', record: {}, scan })
  return { ...job, marks: [listed(line)] }
}

describe('a mark that is on a stroke', () => {
  it('is put back to where the hand pointed, as good as a hand, and that is taken back as one', () => {
    const made = putBackByHand(line)
    if ('refused' in made) throw new Error(inWords(made.refused))
    const { job, inverse } = applyEdit(withLine(), made.edit)
    expect(job.marks[0]).toEqual({
      id: 'M1',
      sheet: 'S1',
      how: 'hand',
      kind: 'line',
      sigma: 1,
      pixels: rough,
      picks: [{ how: 'hand', sigma: 1, pixels: rough }],
    })
    expect(applyEdit(job, inverse).job).toEqual(withLine())
  })

  it('is found anew without what was picked again before', () => {
    const made = takeFoundAnew(line, { ...onLine, sigma: 0.05 })
    if ('refused' in made) throw new Error(inWords(made.refused))
    const { job } = applyEdit(withLine(), made.edit)
    expect(job.marks[0]).toMatchObject({ how: 'stroke', sigma: 0.05, pixels: onLine.pixels })
    expect(job.marks[0]).not.toHaveProperty('repeats')
  })

  it('is picked again on the stroke only', () => {
    expect(pickAgain(line, onLine)).toEqual({
      edit: { do: 'repeat-pick', mark: 'M1', pixels: onLine.pixels, how: 'stroke', sigma: 0.06 },
    })
    const byHand: UnnamedMark = { how: 'hand', kind: 'line', sigma: 1, pixels: rough }
    const refused = pickAgain(line, byHand)
    expect('refused' in refused && inWords(refused.refused)).toBe(
      'mark M1 is on a stroke, and none was found under this pick: pick nearer to the stroke, or put the mark back by hand first',
    )
  })
})

describe('a mark that was picked by hand', () => {
  it('is picked again by hand', () => {
    expect(pickAgain(point, { how: 'hand', sigma: 1, kind: 'point', pixel: pixel(2, 3) })).toEqual({
      edit: { do: 'repeat-pick', mark: 'M1', pixel: [2, 3], how: 'hand', sigma: 1 },
    })
  })

  it('is not put back to where nobody pointed', () => {
    const refused = putBackByHand(point)
    expect('refused' in refused && inWords(refused.refused)).toBe(
      'mark M1 does not know where a hand pointed to find it: pick it anew',
    )
  })
})

it('a mark stays of its kind', () => {
  const sentence = 'mark M1 is a line, and a point was given for it: pick a line'
  const onPoint: UnnamedMark = { how: 'stroke', sigma: 0.06, kind: 'point', pixel: pixel(1, 1) }
  for (const refused of [pickAgain(line, onPoint), takeFoundAnew(line, onPoint)]) {
    expect('refused' in refused && inWords(refused.refused)).toBe(sentence)
  }
})
