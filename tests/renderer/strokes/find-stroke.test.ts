import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { findStroke } from '../../../src/renderer/strokes/find-stroke.ts'
import type { SearchWish } from '../../../src/renderer/strokes/search-wish.ts'
import { inWords } from '../../../src/renderer/words/window-words.ts'

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

const wish = (as: SearchWish['as'], more: Partial<SearchWish> = {}): SearchWish => ({
  as,
  reach: 8,
  reading: { straight: 'centre', round: 'centre', from: AS_IT_LIES },
  either: true,
  ...more,
})

it.each([
  ['point', 0, 'search.nothing-pointed-at'],
  ['line', 1, 'search.line-wants-two-picks'],
  ['circle', 2, 'search.circle-wants-three-picks'],
  ['arc', 2, 'search.circle-wants-three-picks'],
] as const)('a %s is not looked for with %i picks', (as, picks, code) => {
  const rough = Array.from({ length: picks }, (_, i) => pixel(380 + 20 * i, 280))
  const found = findStroke(scan(level(280.3)), rough, wish(as))
  expect(found).toEqual({ kind: 'none', because: { code, parts: {} } })
})

describe('a point', () => {
  it('is taken where strokes cross when they do within reach, and on the one stroke when that is asked for', () => {
    const window = scan(level(280.3), upright(380.7))
    const crossing = findStroke(window, [pixel(383, 278)], wish('point'))
    expect(crossing).toMatchObject({ kind: 'crossing', reading: 'centre' })
    if (crossing.kind !== 'crossing') return
    expect(crossing.pixel[0]).toBeCloseTo(380.7, 1)
    expect(crossing.pixel[1]).toBeCloseTo(280.3, 1)
    const single = findStroke(window, [pixel(383, 278)], wish('point', { either: false }))
    expect(single.kind).not.toBe('crossing')
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
        const found = findStroke(window, [pixel(381, 281)], wish('point', { reach: 5 }))
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
      const found = findStroke(window, [pixel(382, 279)], wish('point', { reach: 5 }))
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
      const seen = { straight, round: 'centre', from: AS_IT_LIES } as const
      const found = findStroke(window, [pixel(380, 281)], wish('point', { reading: seen }))
      expect(found).toMatchObject({ kind: 'point', reading })
      if (found.kind === 'point') expect(Math.abs(found.pixel[1] - at)).toBeLessThan(0.1)
      // The edge that is called so in a job is that very one.
      expect(findStroke(window, [pixel(380, 281)], wish('point', { reading }))).toEqual(found)
    }
  })

  it('is nowhere on bare paper, and a sentence says so', () => {
    const bare = scan(() => 0)
    const found = findStroke(bare, [pixel(380, 280)], wish('point'))
    expect(found.kind).toBe('none')
    expect(found.kind === 'none' && found.because.code).toMatch(/^stroke\./)
    expect(found.kind === 'none' && inWords(found.because)).toMatch(/^[A-Z].*\.$/)
  })
})

describe('a stroke in the other ink', () => {
  /** Black but for a white stroke across it, 4 px wide. */
  const area = scan(
    (x, y) => (1 - band(y - 280.4, 4)) * (Math.abs(y - 280) < 50 && Math.abs(x - 380) < 78 ? 1 : 0),
  )
  const place = [pixel(381, 282)]

  it('is not taken for one of the sheet, and a sentence says how it is asked for', () => {
    const found = findStroke(area, place, wish('point', { ink: 'dark' }))
    expect(found).toMatchObject({ kind: 'none', because: { code: 'search.other-ink' } })
  })

  it('is found where it is asked for', () => {
    const found = findStroke(area, place, wish('point', { ink: 'light' }))
    expect(found).toMatchObject({ kind: 'point', shape: { dark: false } })
    if (found.kind === 'point') expect(found.pixel[1]).toBeCloseTo(280.4, 1)
  })

  it('is not what lies between two strokes, whatever is asked for', () => {
    const pair = scan(level(270.3, 3), level(295.3, 3))
    for (const ink of ['dark', 'light'] as const) {
      const found = findStroke(pair, [pixel(380, 283)], wish('point', { ink, reach: 6 }))
      expect(found.kind).toBe('none')
      if (found.kind === 'none') expect(found.because.code).toMatch(/^stroke\./)
    }
  })
})
