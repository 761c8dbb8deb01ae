import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { cramerRao } from './cramer-rao.ts'
import { caseStream } from './simulate/case-stream.ts'
import { lineCase } from './simulate/line-case.ts'
import { someLook } from './simulate/look.ts'
import { draw } from './simulate/picture.ts'
import { pixelShare } from './simulate/pixel-share.ts'
import { noisy } from './simulate/scan.ts'
import { acrossOf, bar, ring } from './simulate/shapes.ts'

/** The pixel's mean of what a fine grid sees, blurred by summing over the plane: slow, and without any formula. */
function byFineGrid(inside: (x: number, y: number) => boolean, x: number, y: number, blur: number): number {
  const per = 24
  const reach = blur === 0 ? 0 : Math.ceil(4.5 * blur * per)
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    blur === 0 ? 1 : Math.exp(-((i - reach) ** 2) / (2 * (blur * per) ** 2)),
  )
  // A box of one pixel and the Gaussian, along each axis.
  const kernel = new Array<number>(per + 2 * reach).fill(0)
  weights.forEach((w, i) => {
    for (let k = 0; k < per; k++) kernel[i + k] = (kernel[i + k] ?? 0) + w
  })
  let sum = 0
  let all = 0
  const start = -(kernel.length - 1) / 2
  kernel.forEach((wy, j) => {
    kernel.forEach((wx, i) => {
      all += wx * wy
      if (inside(x + (start + i) / per, y + (start + j) / per)) sum += wx * wy
    })
  })
  return sum / all
}

describe('a simulated scan', () => {
  it('covers a pixel by the exact area of the half-plane in it', () => {
    // A corner cut off at 45°, with legs of 0.3: area 0.045. Half a pixel beyond an upright edge: 0.5 − 0.2.
    const s = Math.SQRT1_2
    expect(pixelShare(-(1 - 0.3) * s, [s, s], 0)).toBeCloseTo(0.045, 12)
    expect(pixelShare(-0.2, [1, 0], 0)).toBeCloseTo(0.3, 12)
    expect(pixelShare(0.2, [0, -1], 0)).toBeCloseTo(0.7, 12)
  })

  it.each([0.3, 0.7, 1.5])('blurs a straight stroke by %f px as summing over a fine grid does', (blur) => {
    const direction = 0.4
    const n = acrossOf(direction)
    const stroke = bar(pixel(5.3, 5.1), direction, 2.2)
    for (const [x, y] of [
      [5.5, 5.5],
      [6.5, 3.5],
      [4.5, 7.5],
    ] as const) {
      const grid = byFineGrid((u, v) => Math.abs((u - 5.3) * n[0] + (v - 5.1) * n[1]) < 1.1, x, y, blur)
      expect(Math.abs(stroke(x, y, blur) - grid)).toBeLessThan(0.003)
    }
  })

  it('blurs a round stroke of 15 px radius as summing over a fine grid does', () => {
    const stroke = ring(pixel(0, 0), 15, 3)
    for (const a of [0.1, 0.6, 1.3]) {
      for (const r of [13, 13.6, 14.4, 15.5, 16.4, 17]) {
        const [x, y] = [r * Math.cos(a), r * Math.sin(a)]
        const grid = byFineGrid((u, v) => Math.abs(Math.hypot(u, v) - 15) < 1.5, x, y, 1)
        expect(Math.abs(stroke(x, y, 1) - grid)).toBeLessThan(0.003)
      }
    }
  })

  it('has noise of the standard deviation asked for, grained or not', () => {
    const flat = draw({
      width: 200,
      height: 200,
      ground: 0,
      slope: pixel(0, 0),
      strokes: [],
      stains: [],
      blur: 0,
    })
    for (const grain of [0, 1]) {
      const { data } = noisy(flat, 7, caseStream(3), grain)
      const rms = Math.sqrt(data.reduce((sum, v) => sum + v * v, 0) / data.length)
      expect(rms).toBeGreaterThan(6.7)
      expect(rms).toBeLessThan(7.3)
    }
  })
})

describe('the Cramér–Rao bound', () => {
  it('of a level line of sharp strokes is σ / (C √(2 N)) across: each edge moves the grey of N pixels by C', () => {
    // From the definition: two edges that each lie within one row, N columns; the derivative there is ±C.
    const [N, C, sigma] = [40, 100, 5]
    const bound = cramerRao(
      {
        picture: ([across = 0]) => ({
          width: N,
          height: 20,
          ground: 200,
          slope: pixel(0, 0),
          strokes: [{ shape: bar(pixel(20, 10.5 + across), 0, 4), adds: -C }],
          stains: [],
          blur: 0,
        }),
        at: [0],
        steps: [0.1],
        used: () => true,
      },
      sigma,
    )
    expect(Math.sqrt(bound.get(0, 0))).toBeCloseTo(sigma / (C * Math.sqrt(2 * N)), 8)
  })

  it('of a straight stroke: turning about its middle is √12 / length times as uncertain as moving across', async () => {
    // Kay (1993), chapter 3: pieces of equal information spread evenly over the length.
    const c = await lineCase({ ...someLook('noise', caseStream(1)), blur: 0.8, width: 4 }, caseStream(2))
    const covariance = cramerRao(
      {
        picture: ([across = 0, turn = 0]) => c.picture(across, turn),
        at: [0, 0],
        steps: [0.02, 0.0002],
        used: (x, y) => {
          const [mx, my] = [(c.ends[0][0] + c.ends[1][0]) / 2, (c.ends[0][1] + c.ends[1][1]) / 2]
          const s = (x - mx) * Math.cos(c.direction) + (y - my) * Math.sin(c.direction)
          return Math.abs(s) < c.length / 2 - 5
        },
      },
      1,
    )
    const ratio = Math.sqrt(covariance.get(1, 1) / covariance.get(0, 0))
    expect(ratio * (c.length - 10)).toBeGreaterThan(0.95 * Math.sqrt(12))
    expect(ratio * (c.length - 10)).toBeLessThan(1.05 * Math.sqrt(12))
  })
})
