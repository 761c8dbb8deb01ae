import { describe, expect, it } from 'vitest'
import type { GreyWindow } from '../../../../src/core/imaging/window/grey-window.ts'
import { inkOf, inkOfUpright } from '../../../../src/core/reading/patch/ink-of.ts'
import { sampleUpright } from '../../../../src/core/reading/patch/sample-upright.ts'
import { boxOnPage, placeOnPage } from '../../../../src/core/reading/patch/upright-places.ts'
import { inkOfSvg } from '../../imaging/drawn/svg-picture.ts'

const [WIDE, HIGH] = [400, 150]
const STROKES = 'fill="none" stroke="black" stroke-width="4"'
/** A 4 and an 8 of their strokes, 30 pixels high. */
const FIGURE = `<g ${STROKES}><path d="M150 60l-14 20h20M150 60v30"/><circle cx="190" cy="67" r="7"/><circle cx="190" cy="82" r="8"/></g>`

/** Repeatable noise of unit variance or nearly. */
function noise(n: number): Float32Array {
  let state = 12345
  return Float32Array.from({ length: n }, () => {
    let sum = 0
    for (let k = 0; k < 12; k++) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      sum += state / 2 ** 32
    }
    return sum - 6
  })
}

/** A figure on a ground that goes from 235 to 185, with a round stain on it that takes off 45. */
async function scan(light: boolean, contrast: number): Promise<{ window: GreyWindow; ink: Float64Array }> {
  const { data: ink } = await inkOfSvg(FIGURE, WIDE, HIGH, 0.8)
  const extra = noise(WIDE * HIGH)
  const data = Uint8Array.from({ length: WIDE * HIGH }, (_, i) => {
    const [x, y] = [i % WIDE, Math.floor(i / WIDE)]
    const ground = 235 - (50 * x) / WIDE - (Math.hypot(x - 185, y - 40) < 40 ? 45 : 0)
    const grey = ground - contrast * (ink[i] ?? 0) + 4 * (extra[i] ?? 0)
    return Math.min(255, Math.max(0, Math.round(light ? 255 - grey : grey)))
  })
  return { window: { left: 1000, top: 500, width: WIDE, height: HIGH, data }, ink: Float64Array.from(ink) }
}

const whole = { centre: [1200, 575], width: WIDE, height: HIGH, angle: 0 } as const

describe('ink of a patch', () => {
  it.each([
    [false, 120],
    [true, 120],
    [false, 60],
    [true, 60],
  ])(
    'is 1 on strokes and 0 on stained, uneven ground, light ink %s, contrast %d',
    async (light, contrast) => {
      const { window, ink } = await scan(light, contrast)
      const upright = sampleUpright(window, whole, 1)
      expect(inkOfUpright(upright)).toBe(light ? 'light' : 'dark')
      const seen = inkOf(upright).ink
      const on = seen.filter((_, i) => (ink[i] ?? 0) > 0.95).sort()
      const off = seen.filter((_, i) => (ink[i] ?? 0) === 0).sort()
      expect(on[on.length >> 1]).toBeGreaterThan(0.85)
      expect(on[on.length >> 1]).toBeLessThan(1.15)
      expect(on[Math.floor(on.length * 0.05)]).toBeGreaterThan(0.6)
      expect(off[Math.floor(off.length * 0.99)]).toBeLessThan(0.4)
    },
  )

  it('is brought up where it fades, to what it is elsewhere', async () => {
    const { data: ink } = await inkOfSvg(FIGURE, WIDE, HIGH, 0.8)
    const data = Float32Array.from(ink, (v, i) => 220 - (i % WIDE < 170 ? 120 : 72) * v)
    const seen = inkOf({ width: WIDE, height: HIGH, grey: data }).ink
    const median = (from: number, to: number) => {
      const values = seen.filter((_, i) => i % WIDE >= from && i % WIDE < to && (ink[i] ?? 0) > 0.9).sort()
      return values[values.length >> 1] ?? 0
    }
    expect(median(180, 220) / median(120, 160)).toBeGreaterThan(0.75)
  })

  it('is nothing of bare ground', () => {
    const extra = noise(100 * 60)
    const grey = Float32Array.from(extra, (v) => 210 + 3 * v)
    const seen = inkOf({ width: 100, height: 60, grey }).ink
    expect(seen.every(Number.isFinite)).toBe(true)
  })
})

describe('an upright rectangle', () => {
  it.each([0, 17, -90, 90, -47])('holds what stands in the turned box, by %d degrees', (angle) => {
    const data = new Float32Array(300 * 300).fill(200)
    const box = { centre: [140, 160], width: 120, height: 40, angle } as const
    // A dark spot where the upright rectangle has its place 90, 12 at scale 1.
    const [px, py] = placeOnPage(box, 1, [90, 12])
    for (let y = 0; y < 300; y++)
      for (let x = 0; x < 300; x++) if (Math.hypot(x + 0.5 - px, y + 0.5 - py) < 4) data[y * 300 + x] = 0
    for (const scale of [0.4, 1, 1.7]) {
      const { width, height, grey } = sampleUpright(
        { left: 0, top: 0, width: 300, height: 300, data },
        box,
        scale,
      )
      let [mass, mx, my] = [0, 0, 0]
      for (let i = 0; i < grey.length; i++) {
        const dark = 200 - (grey[i] ?? 0)
        mass += dark
        mx += dark * ((i % width) + 0.5)
        my += dark * (Math.floor(i / width) + 0.5)
      }
      expect([width, height]).toEqual([Math.round(120 * scale), Math.round(40 * scale)])
      expect(mx / mass / scale).toBeCloseTo(90, 0)
      expect(my / mass / scale).toBeCloseTo(12, 0)
    }
  })

  it('is the same of one window as of the same cut in two', () => {
    const data = Float32Array.from({ length: 60 * 40 }, (_, i) => (i * 37) % 251)
    const half = (from: number) =>
      Float32Array.from({ length: 30 * 40 }, (_, i) => data[Math.floor(i / 30) * 60 + from + (i % 30)] ?? 0)
    const box = { centre: [30, 20], width: 60, height: 40, angle: 0 } as const
    const one = sampleUpright({ left: 0, top: 0, width: 60, height: 40, data }, box, 1)
    const two = sampleUpright(
      [
        { left: 0, top: 0, width: 30, height: 40, data: half(0) },
        { left: 30, top: 0, width: 30, height: 40, data: half(30) },
      ],
      box,
      1,
    )
    expect(two.grey).toEqual(one.grey)
  })

  it('tells where on the page a box of it is', () => {
    const box = { centre: [100, 100], width: 40, height: 20, angle: -90 } as const
    const [x, y, width, height] = boxOnPage(box, 2, [0, 0, 20, 10])
    // Read from the right: its left end is at the bottom of the page, its upper edge at the left.
    expect(x).toBeCloseTo(90)
    expect(y).toBeCloseTo(110)
    expect(width).toBeCloseTo(5)
    expect(height).toBeCloseTo(10)
  })
})
