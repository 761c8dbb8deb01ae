import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { inkMap } from '../../../src/renderer/overlay/ink-map.ts'

/** A picture of a sheet four times as large, drawn by what stands at each of its pixels. */
function picture(width: number, height: number, greyAt: (x: number, y: number) => number) {
  const data = Uint8Array.from({ length: width * height }, (_, i) => greyAt(i % width, Math.floor(i / width)))
  return inkMap({ width, height, data }, 4 * width)
}
const DRAWN = [100, 100] as const
const strokes = (ground: number, ink: number) =>
  picture(60, 60, (x, y) => (x >= 20 && x < 30 && y >= 20 && y < 30 && x % 2 === 0 ? ink : ground))

describe('How much is drawn about a place', () => {
  it('is nothing on bare paper, and more where there are strokes', () => {
    const about = strokes(230, 20)
    expect(about(pixel(20, 20), 16)).toBe(0)
    expect(about(pixel(...DRAWN), 16)).toBeGreaterThan(0.2)
  })

  it('is the same for a negative', () => {
    expect(strokes(25, 235)(pixel(...DRAWN), 16)).toBe(strokes(230, 20)(pixel(...DRAWN), 16))
  })

  it('is next to nothing on a stain, however dark', () => {
    const stained = picture(60, 60, (x) => 230 - 2 * x)
    expect(stained(pixel(...DRAWN), 40)).toBeLessThan(0.005)
  })

  it('is the mean change of greys that it says, summed pixel by pixel', () => {
    const grey = (x: number, y: number): number => (37 * x + 91 * y + x * y) % 256
    const about = picture(40, 30, grey)
    let sum = 0
    for (let y = 5; y < 15; y++) {
      for (let x = 10; x < 20; x++) {
        sum += Math.abs(grey(x + 1, y) - grey(x, y)) + Math.abs(grey(x, y + 1) - grey(x, y))
      }
    }
    expect(about(pixel(60, 40), 20)).toBeCloseTo(sum / (2 * 255 * 100), 12)
  })

  it('is nothing off the sheet', () => {
    expect(strokes(230, 20)(pixel(-500, -500), 20)).toBe(0)
  })
})
