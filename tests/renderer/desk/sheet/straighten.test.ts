import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees, toRadians } from '../../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { toScreen } from '../../../../src/renderer/camera/camera.ts'
import {
  pickedLine,
  slopeInWords,
  straightBy,
  uncertaintyInWords,
} from '../../../../src/renderer/desk/sheet/straighten.ts'
import { PLAIN } from '../../../../src/renderer/looking/aids.ts'
import { turnFor } from '../../../../src/renderer/looking/starting-aids.ts'
import type { Picks } from '../../../../src/renderer/picking/picks.ts'
import type { StrokeState } from '../../../../src/renderer/picking/stroke-state.ts'
import { reason } from '../../../../src/renderer/words/window-words.ts'

const DEGREE = Math.PI / 180

const alongLine = (pixels: Pixel[], sigma: number): Picks => ({
  tool: { kind: 'straighten' },
  features: [{ need: 'line', pixels, sigmas: pixels.map(() => sigma), done: true }],
})

describe('the line that a sheet is straightened by', () => {
  it('has the direction of the two picks, and is as sure as they are and as it is long', () => {
    const line = pickedLine(alongLine([pixel(100, 200), pixel(1100, 250)], 1), [])
    expect(line?.angle).toBeCloseTo(Math.atan2(50, 1000) / DEGREE, 12)
    // Two ends, each a pixel unsure across the line: u = sqrt(2) / length. JCGM 100:2008, eq. 10.
    expect(line?.u).toBeCloseTo(Math.SQRT2 / Math.hypot(1000, 50) / DEGREE, 12)
  })

  it('is surer with more centres along it than with its two ends', () => {
    const centres = Array.from({ length: 101 }, (_, i) => pixel(10 * i, 0))
    const ends = pickedLine(alongLine([pixel(0, 0), pixel(1000, 0)], 1), [])
    const all = pickedLine(alongLine(centres, 1), [])
    // Slope of a regression through n equally spaced points: u² = 12 σ² / (d² n (n² − 1)), from memory.
    expect(all?.u).toBeCloseTo(Math.sqrt(12 / (100 * 101 * (101 ** 2 - 1))) / DEGREE, 12)
    expect(all?.u).toBeLessThan((ends?.u ?? 0) / 3)
  })

  it('is the stroke that was found under the picks, and waits while one is looked for', () => {
    const ends: Pixel[] = [pixel(0, 0), pixel(100, 3)]
    const centres: Pixel[] = [pixel(0, 1), pixel(50, 1), pixel(100, 1)]
    const picks = (stroke: StrokeState): Picks => ({
      tool: { kind: 'straighten' },
      features: [{ need: 'line', pixels: ends, sigmas: [1, 1], done: true, stroke }],
    })
    const mark = {
      how: 'stroke' as const,
      kind: 'line' as const,
      sigma: 0.1,
      stroke: { as: 'line' as const, reading: 'centre' as const, rough: ends },
      pixels: centres,
    }
    expect(pickedLine(picks({ state: 'looking' }), [])).toBeNull()
    expect(pickedLine(picks({ state: 'found', mark }), [])).toMatchObject({ angle: 0, how: 'stroke' })
    expect(pickedLine(picks({ state: 'none', because: reason('search.stopped') }), [])?.how).toBe('hand')
  })

  it('may be a mark that is there', () => {
    const picks: Picks = {
      tool: { kind: 'straighten' },
      features: [{ need: 'line', mark: 'M1', done: true }],
    }
    const pixels: Pixel[] = [pixel(0, 0), pixel(0, 500)]
    const line = pickedLine(picks, [
      { id: 'M1', sheet: 'S1', how: 'stroke', sigma: 0.1, kind: 'line', pixels },
    ])
    expect(line?.angle).toBeCloseTo(90, 12)
  })

  it('is none while it is being picked, and none without a direction', () => {
    expect(pickedLine({ tool: { kind: 'straighten' }, features: [] }, [])).toBeNull()
    expect(pickedLine(alongLine([pixel(5, 5), pixel(5, 5)], 1), [])).toBeNull()
  })
})

describe('how a sheet lies', () => {
  it('is told by a level line and by an upright one alike', () => {
    expect(straightBy(degrees(3.27), PLAIN)).toBeCloseTo(3.27, 9)
    expect(straightBy(degrees(93.27), PLAIN)).toBeCloseTo(3.27, 9)
    expect(straightBy(degrees(-176.73), PLAIN)).toBeCloseTo(3.27, 9)
    expect(straightBy(degrees(-86.73), PLAIN)).toBeCloseTo(3.27, 9)
  })

  it('goes by the quarter that the sheet is looked at in', () => {
    // The sheet lies on its side on the scan; turned a quarter clockwise it is read.
    expect(straightBy(degrees(-88), { ...PLAIN, turn: degrees(90) })).toBeCloseTo(-88, 9)
    expect(straightBy(degrees(2), { ...PLAIN, turn: degrees(90) })).toBeCloseTo(-88, 9)
  })

  it('makes the line level or upright on the screen, however the sheet was turned and mirrored', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.boolean(),
        (angle, turn, mirror) => {
          const straight = straightBy(degrees(angle), { ...PLAIN, turn: degrees(turn), mirror })
          const turned = turnFor(straight, mirror)
          const camera = { centre: pixel(0, 0), zoom: 1, turn: toRadians(turned), mirror }
          const [x, y] = toScreen(
            camera,
            { width: 0, height: 0 },
            pixel(Math.cos(angle * DEGREE), Math.sin(angle * DEGREE)),
          )
          // To the thousandth of a degree that is kept.
          expect(Math.min(Math.abs(x), Math.abs(y))).toBeLessThan(0.0006 * DEGREE)
          // And the sheet is turned no further than to the nearest of them.
          expect(Math.cos((turned - turn) * DEGREE)).toBeGreaterThan(Math.cos(45.001 * DEGREE))
        },
      ),
    )
  })

  it('is said in words', () => {
    expect(slopeInWords(degrees(3.274))).toBe('3.27° clockwise')
    expect(slopeInWords(degrees(-0.5))).toBe('0.50° anticlockwise')
    expect(slopeInWords(degrees(0.001))).toBe('level')
    expect(uncertaintyInWords(degrees(0.01234))).toBe('0.012°')
    expect(uncertaintyInWords(degrees(0.2))).toBe('0.20°')
  })
})
