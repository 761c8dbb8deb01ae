import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { runSearch, type Search } from '../../../src/renderer/strokes/search.ts'
import { toFitted } from '../../../src/renderer/strokes/to-fitted.ts'

const [LEFT, TOP, SIDE] = [300, 200, 160]

/** Paper with strokes on it, dark by how much of each pixel they cover; places are pixels of the scan. */
function scan(...strokes: ((x: number, y: number) => number)[]): GreyWindow {
  const data = new Float32Array(SIDE * SIDE)
  for (let i = 0; i < data.length; i++) {
    const [x, y] = [LEFT + (i % SIDE) + 0.5, TOP + Math.floor(i / SIDE) + 0.5]
    const covered = Math.max(...strokes.map((stroke) => stroke(x, y)))
    // A weave of paper that is the same at every run.
    const paper = 220 + 2 * Math.sin(i * 12.9898) + 2 * Math.cos(i * 78.233)
    data[i] = paper - 160 * covered
  }
  return { left: LEFT, top: TOP, width: SIDE, height: SIDE, data }
}

/** How much of a pixel a band of some width about 0 covers, straight across. */
const band = (off: number, width: number): number =>
  Math.min(1, Math.max(0, Math.min(off + 0.5, width / 2) - Math.max(off - 0.5, -width / 2)))

const level =
  (at: number, width = 4) =>
  (_: number, y: number) =>
    band(y - at, width)
const upright =
  (at: number, width = 4) =>
  (x: number) =>
    band(x - at, width)

const search = (as: Search['as'], rough: Pixel[], more: Partial<Search> = {}): Search => ({
  as,
  rough,
  reach: 8,
  wanted: { straight: 'centre', round: 'centre', from: AS_IT_LIES },
  either: true,
  ...more,
})

describe('a point', () => {
  it('is taken where strokes cross when they do within reach, and on the one stroke when that is asked for', () => {
    const window = scan(level(280.3), upright(380.7))
    const crossing = runSearch(window, search('point', [pixel(383, 278)]))
    expect(crossing.found).toMatchObject({ kind: 'crossing' })
    if (crossing.found.kind !== 'crossing') return
    expect(crossing.found.pixel[0]).toBeCloseTo(380.7, 1)
    expect(crossing.found.pixel[1]).toBeCloseTo(280.3, 1)
    expect(runSearch(window, search('point', [pixel(383, 278)], { either: false })).found.kind).not.toBe(
      'crossing',
    )
  })

  /** A ring four pixels wide through the middle of the window, its centre so far off that way. */
  const ring = (radius: number, way: number): { centre: Pixel; window: GreyWindow } => {
    const centre: Pixel = pixel(380 + radius * Math.cos(way), 280 + radius * Math.sin(way))
    const window = scan((x, y) => band(Math.hypot(x - centre[0], y - centre[1]) - radius, 4))
    return { centre, window }
  }

  it.each([42, 60, 100, 200])(
    'on a round stroke of radius %i px is on it, and no crossing of its chords',
    (radius) => {
      for (let k = 0; k < 12; k++) {
        const { centre, window } = ring(radius, 0.1 + (k * Math.PI) / 6)
        const { found } = runSearch(window, search('point', [pixel(381, 281)], { reach: 5 }))
        expect(found.kind).toBe('point')
        if (found.kind !== 'point') return
        const off = Math.hypot(found.pixel[0] - centre[0], found.pixel[1] - centre[1]) - radius
        expect(Math.abs(off)).toBeLessThan(0.1)
      }
    },
  )

  it('is taken at a corner though that is a shallow one', () => {
    for (let k = 0; k < 12; k++) {
      const arms = [0.1 + (k * Math.PI) / 6, 0.1 + (k * Math.PI) / 6 + (5 * Math.PI) / 6]
      const window = scan(
        ...arms.map((way) => (x: number, y: number) => {
          const [dx, dy] = [x - 380, y - 280]
          const along = dx * Math.cos(way) + dy * Math.sin(way)
          return along < -1 ? 0 : band(dy * Math.cos(way) - dx * Math.sin(way), 4)
        }),
      )
      const { found } = runSearch(window, search('point', [pixel(382, 279)], { reach: 5 }))
      expect(found.kind).toBe('crossing')
      if (found.kind === 'crossing')
        expect(Math.hypot(found.pixel[0] - 380, found.pixel[1] - 280)).toBeLessThan(0.5)
    }
  })

  it('is read on the edge that is wanted', () => {
    const window = scan(level(280.3, 6))
    for (const [straight, at, reading] of [
      ['upper', 277.3, 'left'],
      ['lower', 283.3, 'right'],
    ] as const) {
      const wanted = { straight, round: 'centre', from: AS_IT_LIES } as const
      const result = runSearch(window, search('point', [pixel(380, 281)], { wanted }))
      expect(result).toMatchObject({ reading, found: { kind: 'point' } })
      if (result.found.kind === 'point') expect(Math.abs(result.found.pixel[1] - at)).toBeLessThan(0.1)
    }
  })

  it('is nowhere on bare paper, and a sentence says so', () => {
    const { found } = runSearch(
      scan(() => 0),
      search('point', [pixel(380, 280)]),
    )
    expect(found.kind).toBe('none')
    expect(found.kind === 'none' && found.because).toMatch(/\.$/)
  })
})

describe('what was found, as a job keeps it', () => {
  it('is uncertain across the stroke as found and along it as pointed at', () => {
    const result = runSearch(scan(level(280.3)), search('point', [pixel(380, 281)]))
    if (!('reading' in result)) throw new Error('The stroke was not found.')
    const { covariance, sigma, across, pixels, stroke } = toFitted(
      result.found,
      result.reading,
      [pixel(380, 281)],
      1,
    )
    expect(sigma).toBe(1)
    expect(covariance?.[0]).toBeCloseTo(1, 3)
    expect(Math.sqrt(covariance?.[2] ?? 1)).toBeCloseTo(across, 3)
    expect(across).toBeLessThan(0.1)
    expect(pixels).toHaveLength(1)
    expect(stroke).toMatchObject({ as: 'point', reading: 'centre', rough: [[380, 281]] })
  })

  it('is a line through the centres of its profiles, with those apart that do not lie on it', () => {
    const result = runSearch(
      scan(level(280.3), upright(380.7)),
      search('line', [pixel(320, 281), pixel(440, 279)]),
    )
    if (!('reading' in result)) throw new Error('The stroke was not found.')
    const { pixels, stroke, sigma } = toFitted(
      result.found,
      result.reading,
      [pixel(320, 281), pixel(440, 279)],
      1,
    )
    expect(pixels.length).toBeGreaterThan(5)
    expect(pixels.length).toBeLessThanOrEqual(64)
    for (const [, y] of pixels) expect(Math.abs(y - 280.3)).toBeLessThan(0.1)
    expect((stroke.leftOut ?? []).length).toBeGreaterThan(0)
    for (const [x] of stroke.leftOut ?? []) expect(Math.abs(x - 380.7)).toBeLessThan(10)
    expect(sigma).toBeLessThan(0.3)
    expect(String(pixels[0]?.[0]).length).toBeLessThanOrEqual(7)
  })
})
