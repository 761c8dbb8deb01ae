import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import type { FoundOn, Mark } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())
const base = { id: 'M77', sheet: 's1', how: 'stroke', sigma: 1 } as const
const point: Mark = { ...base, kind: 'point', pixel: pixel(3, 4) }
const line: Mark = {
  ...base,
  kind: 'line',
  pixels: [pixel(0, 0), pixel(10, 0)],
}

const problemOf = (item: Mark): string => {
  try {
    applyEdit(job, { do: 'add-mark', item })
    return ''
  } catch (error) {
    return String(error)
  }
}

describe('a mark that was found on a stroke', () => {
  it.each([
    [[1, 0, 0.01], ''],
    [[0.5, 0.5, 0.5], ''],
    [[1, 1.1, 1], 'xy² is larger than xx·yy'],
    [[100, 0, 100], 'sigma is that of the worse direction'],
  ] as const)('has a covariance %j that can be, with a sigma to match', (covariance, said) => {
    const problem = problemOf({ ...point, covariance: [...covariance] })
    expect(said === '' ? problem : problem.includes(said)).toBe(said === '' ? '' : true)
  })

  it('says of what it was found, in keeping with what it is', () => {
    const stroke = (as: FoundOn['as'], n: number): FoundOn => ({
      as,
      reading: 'centre',
      rough: Array.from({ length: n }, (_, i) => pixel(i, 0)),
    })
    expect(problemOf({ ...point, stroke: stroke('crossing', 1) })).toBe('')
    expect(problemOf({ ...point, stroke: stroke('line', 2) })).toContain(
      'it is a point, and says it was found as a line',
    )
    expect(problemOf({ ...line, stroke: stroke('line', 2) })).toBe('')
    expect(problemOf({ ...line, stroke: stroke('line', 1) })).toContain('2 rough picks or more, and has 1')
  })

  it('is picked again whole, and no oftener signed than picked', () => {
    expect(problemOf({ ...line, repeats: [[pixel(0, 1)]] } as Mark)).toContain(
      'in its repeated pick 1, a line needs 2',
    )
    expect(problemOf({ ...point, repeats: [pixel(1, 1)], repeatedBy: [{}, {}] } as Mark)).toContain(
      'picked it again 2 times',
    )
    expect(problemOf({ ...point, repeats: [pixel(1, 1)], repeatedBy: [{ by: 'nobody' }] } as Mark)).toContain(
      '"nobody"',
    )
  })
})
