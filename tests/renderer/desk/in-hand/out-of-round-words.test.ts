import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { outOfRoundInWords } from '../../../../src/renderer/desk/in-hand/out-of-round-words.ts'

/** Places round an ellipse, a hundredth of a pixel off it by turns. */
const round = (long: number, short: number, turned = 0): Pixel[] =>
  Array.from({ length: 48 }, (_, k): Pixel => {
    const a = (k * Math.PI) / 24
    const off = k % 3 === 0 ? 1e-2 : -5e-3
    const [x, y] = [(long + off) * Math.cos(a), (short + off) * Math.sin(a)]
    return pixel(
      500 + x * Math.cos(turned) - y * Math.sin(turned),
      400 + x * Math.sin(turned) + y * Math.cos(turned),
    )
  })

describe('out of round, in words', () => {
  it('says by how much, and which way is the longest as the scan is seen', () => {
    expect(outOfRoundInWords('circle', round(101, 100))).toMatch(
      /^It is out of round by 2\.0 px, longest level: /,
    )
    expect(outOfRoundInWords('circle', round(101, 100, -Math.PI / 6))).toMatch(
      /longest 30° up to the right: /,
    )
    expect(outOfRoundInWords('circle', round(101, 100, Math.PI / 6))).toMatch(
      /longest 30° down to the right: /,
    )
  })

  it('says nothing of what is round, nor of what is no whole circle', () => {
    expect(outOfRoundInWords('circle', round(100, 100))).toBe('')
    expect(outOfRoundInWords('arc', round(101, 100))).toBe('')
  })
})
