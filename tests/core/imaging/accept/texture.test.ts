import { describe, expect, it } from 'vitest'
import { isTexture } from '../../../../src/core/imaging/accept/texture.ts'

/** The profile across strokes 4 px wide and so far apart, one of them in the middle, 40 px to both sides. */
function across(contrast: number, period: number) {
  const value = Float64Array.from({ length: 160 }, (_, i) => {
    const u = -39.75 + i / 2
    return 120 + (Math.abs(u - period * Math.round(u / period)) < 2 ? contrast : 0)
  })
  return isTexture({ low: -39.75, value }, { width: 4, contrast })
}

describe('a stroke is taken for a texture', () => {
  it('where more than three alike lie no farther apart than 3.6 of their widths', () => {
    // Five within 25.6 px of the middle when they are 10 px apart, three when they are 16 px apart.
    expect(across(-50, 10)).toBe(true)
    expect(across(50, 10)).toBe(true)
    expect(across(-50, 16)).toBe(false)
  })

  it('where three do if it is as faint as no ink', () => {
    expect(across(-11, 16)).toBe(true)
    expect(across(-13, 16)).toBe(false)
    expect(across(-11, 30)).toBe(false)
  })

  it('never where it is as strong as ink', () => {
    expect(across(-69, 10)).toBe(true)
    expect(across(-71, 10)).toBe(false)
  })
})
