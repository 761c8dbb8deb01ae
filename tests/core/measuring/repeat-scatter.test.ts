import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Mark } from '../../../src/core/job/model/types.ts'
import { repeatScatter } from '../../../src/core/measuring/features/repeat-scatter.ts'

const base = { id: 'P', sheet: 'S1', sigma: 1 } as const

describe('how repeated picks scatter', () => {
  it('is not told of a mark that was picked once', () => {
    expect(repeatScatter({ ...base, how: 'hand', kind: 'point', pixel: pixel(1, 1) })).toBeNull()
  })

  it('is the standard deviation of both coordinates of a point, and of the mean less by √n', () => {
    // x: 1000, 1002, 1001: s² = 1; y: 500, 499, 504: s² = 7; together 4, with 2 (n − 1) degrees of freedom.
    const mark: Mark = {
      ...base,
      how: 'hand',
      kind: 'point',
      pixel: pixel(1000, 500),
      repeats: [pixel(1002, 499), pixel(1001, 504)],
    }
    const scatter = repeatScatter(mark)
    expect(scatter).toMatchObject({ n: 3, of: 'point', s: 2, dof: 4, alone: 1 })
    expect(scatter?.together).toBeCloseTo(2 / Math.sqrt(3), 12)
  })

  it('on a stroke is that across it, beside what the fit leaves open', () => {
    // A level stroke: y 500, 500.2, 500.4: s = 0.2, u² = 0.1² + 0.04/3.
    const mark: Mark = {
      ...base,
      how: 'stroke',
      kind: 'point',
      pixel: pixel(100, 500),
      covariance: [1, 0, 0.01],
      repeats: [pixel(104, 500.2), pixel(99, 500.4)],
    }
    const scatter = repeatScatter(mark)
    expect(scatter).toMatchObject({ n: 3, of: 'across', dof: 2 })
    expect(scatter?.alone).toBeCloseTo(0.1, 12)
    expect(scatter?.s).toBeCloseTo(0.2, 9)
    expect(scatter?.together).toBeCloseTo(Math.sqrt(0.01 + 0.04 / 3), 9)
  })

  it('of a line is that across its middle', () => {
    const mark: Mark = {
      ...base,
      how: 'hand',
      kind: 'line',
      pixels: [pixel(0, 0), pixel(1000, 2)],
      repeats: [[pixel(0, 2), pixel(1000, 0)]],
    }
    // Squares 4 about y = 1, with two degrees of freedom: s² = 2; in the middle of four points s/2.
    expect(repeatScatter(mark)).toMatchObject({ n: 2, of: 'line', dof: 2 })
    expect(repeatScatter(mark)?.s).toBeCloseTo(Math.SQRT2, 9)
    expect(repeatScatter(mark)?.alone).toBeCloseTo(Math.SQRT1_2, 5)
    expect(repeatScatter(mark)?.together).toBeCloseTo(Math.SQRT1_2, 9)
  })

  it('is nothing where they agree to the last digit', () => {
    const mark: Mark = { ...base, how: 'hand', kind: 'point', pixel: pixel(1, 1), repeats: [pixel(1, 1)] }
    expect(repeatScatter(mark)).toMatchObject({ n: 2, s: 0, alone: 1 })
  })
})
