import { describe, expect, it } from 'vitest'
import { type CoursePoint, forwardSearch } from '../../../../src/core/imaging/outliers/forward-search.ts'

/** Eight readings on the line 2 + 0.01·s with deviations of about their sigma, then some moved. */
const AGREEING = [0.6, -0.9, 0.3, 1.1, -0.5, -1.2, 0.8, -0.2]
const points = (moved: Record<number, number> = {}): CoursePoint[] =>
  AGREEING.map((e, i) => {
    const along = 2 + 4 * i
    return { along, reading: 2 + 0.01 * along + 0.05 * e + (moved[i] ?? 0), sigma: 0.05 }
  })
const ALL = AGREEING.map((_, i) => i)

function suspects(all: readonly CoursePoint[], chosen: readonly number[] = ALL): number[] {
  const course = forwardSearch(all, chosen, 3.29)
  return ALL.filter((i) => Math.abs(course[i]?.z ?? 0) > 3.29)
}

describe('the course that most readings agree on', () => {
  it('takes in all that scatter as they should', () => expect(suspects(points())).toEqual([]))

  it('is not turned by three at one end, all to the same side, as beside a stain', () =>
    expect(suspects(points({ 5: 0.4, 6: 0.5, 7: 0.4 }))).toEqual([5, 6, 7]))

  it('is not moved by one at each end', () => expect(suspects(points({ 0: 0.5, 7: 0.5 }))).toEqual([0, 7]))

  it('leaves none out where all scatter alike and more than their noise', () => {
    const loose = points().map((p) => ({ ...p, sigma: p.sigma / 2 }))
    expect(suspects(loose)).toEqual([])
  })

  it('says how far those lie off that may not steer it', () => {
    const chosen = ALL.filter((i) => i !== 3)
    const [, , , moved] = forwardSearch(points({ 3: 1 }), chosen, 3.29)
    expect(moved?.deviation).toBeGreaterThan(0.9)
    expect(moved?.deviation).toBeLessThan(1.2)
  })
})
