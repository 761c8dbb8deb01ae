import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findRoundEnd, type GreyWindow, searchWindow } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { FINISHES, type Finish, scanned } from './scanned.ts'
import { drawnSlot, endOf, placeOnEnd, type Slot } from './slot.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 420
const SLOTS = 2
const TWENTY = (20 * Math.PI) / 180

interface Trial {
  off: number
  /** Of the radius, and that in units of what was stated. */
  radius: number
  z: number
}

/** Both ends of slots in every direction, each pointed at once, up to 45° from its top and 3 px beside the stroke. */
async function trials(finish: Finish, seed: number): Promise<(Trial | null)[]> {
  const all = await many(SLOTS, seed, async (random) => {
    const radius = between(random, 9, 60)
    const slot: Slot = {
      middle: pixel(SIZE / 2, SIZE / 2),
      half: between(random, 0.7, 1.6) * radius,
      radius,
      tilt: between(random, 0, Math.PI),
      width: between(random, 1.6, 5),
      centreLine: random.uniform() < 0.5,
    }
    const ink = await inkOfSvg(drawnSlot(slot), SIZE, SIZE, between(random, 0.4, 1))
    const window = await scanned(ink, finish, false, random)
    return ([1, -1] as const).map((end): Trial | null => {
      const at = placeOnEnd(slot, end, between(random, -0.8, 0.8), between(random, -3, 3))
      const found = findRoundEnd(window, at)
      if (found.kind === 'none') return null
      const [x, y] = endOf(slot, end)
      const away = found.radius - radius
      return {
        off: Math.hypot(found.centre[0] - x, found.centre[1] - y),
        radius: away,
        z: away / Math.sqrt(found.covariance[5]),
      }
    })
  })
  return all.flat()
}

async function scanOf(drawing: string): Promise<GreyWindow> {
  const { width, height, data } = await inkOfSvg(drawing, SIZE, SIZE, 0.7)
  return { left: 0, top: 0, width, height, data: Uint8Array.from(data, (ink) => Math.round(230 - 190 * ink)) }
}

describe('the round end of a slot, from one place on it', () => {
  it.each(FINISHES.map((finish, i) => ({ finish, seed: 640 + i })))(
    'is found with its middle and its radius: $finish',
    async ({ finish, seed }) => {
      const found = await trials(finish, seed)
      expect(found).toHaveLength(2 * SLOTS)
      for (const end of found) {
        expect(end?.off).toBeLessThan(0.6)
        expect(Math.abs(end?.radius ?? Number.NaN)).toBeLessThan(0.6)
        expect(Math.abs(end?.z ?? Number.NaN)).toBeLessThan(4.5)
      }
    },
  )

  it.each([
    { width: 1.8, tilt: 0 },
    { width: 9, tilt: TWENTY },
  ])('is read at its middle and at either edge: $width px wide, tilted by $tilt', async ({ width, tilt }) => {
    const slot: Slot = { middle: pixel(210, 210), half: 60, radius: 40, tilt, width, centreLine: true }
    const scan = await scanOf(drawnSlot(slot))
    const radii = (['centre', 'left', 'right'] as const).map((reading) => {
      const found = findRoundEnd(scan, placeOnEnd(slot, 1, 0.3, 2), { reading })
      return found.kind === 'none' ? found.because.code : found.radius
    })
    expect(radii[0]).toBeCloseTo(40, 0)
    expect(radii[1]).toBeCloseTo(40 + width / 2, 0)
    expect(radii[2]).toBeCloseTo(40 - width / 2, 0)
  })

  it('is none on a straight side, at a rounded corner, or on empty paper, and says so', async () => {
    const slot: Slot = { middle: pixel(210, 210), half: 90, radius: 30, tilt: 0, width: 3 }
    const scan = await scanOf(drawnSlot(slot))
    const why = (grey: GreyWindow, at: Pixel): string => {
      const found = findRoundEnd(grey, at)
      return found.kind === 'none' ? found.because.code : `a radius of ${found.radius}`
    }
    expect(why(scan, pixel(210, 180))).toBe('stroke.no-round-end')
    expect(why(scan, pixel(210, 210))).toBe('stroke.none-within')
    for (const radius of [12, 40]) {
      const corner = `<rect x="90" y="90" width="240" height="200" rx="${radius}" fill="none" stroke="black" stroke-width="3"/>`
      const at = 90 + radius * (1 - Math.SQRT1_2)
      expect(why(await scanOf(corner), pixel(at, at))).toBe('stroke.no-round-end')
    }
  })

  it('is looked for in a window with room for the largest', () => {
    const { box } = searchWindow([pixel(1000, 1000)], 'end', { reach: 8 })
    expect(box[2] - box[0]).toBeGreaterThan(4 * 120)
    expect(box.map((edge) => Math.abs(edge - 1000)).every((far) => far === box[2] - 1000)).toBe(true)
  })
})
