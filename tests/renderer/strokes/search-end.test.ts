import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { lookInStages, type Sought } from '../../../src/renderer/strokes/search-scan.ts'
import type { SearchWish } from '../../../src/renderer/strokes/search-wish.ts'
import { drawnSlot, endOf, placeOnEnd, type Slot } from '../../core/imaging/drawn/slot.ts'
import { inkOfSvg } from '../../core/imaging/drawn/svg-picture.ts'
import { pyramidOf } from './pyramid-of.ts'

const [WIDTH, HEIGHT] = [1100, 800]
const TWENTY = (20 * Math.PI) / 180
/** How far from a stroke a pick may be, CSS pixels. */
const NEAR = 8

async function scanOf(slot: Slot): Promise<GreyWindow> {
  const { width, height, data } = await inkOfSvg(drawnSlot(slot), WIDTH, HEIGHT, 0.7)
  return { left: 0, top: 0, width, height, data: Uint8Array.from(data, (ink) => Math.round(228 - 190 * ink)) }
}

const slotOf = (radius: number, width: number, tilt: number): Slot => ({
  middle: pixel(550, 400),
  half: Math.min(300, 1.3 * radius),
  radius,
  tilt,
  width,
  centreLine: true,
})

async function sought(slot: Slot, zoom: number, round: SearchWish['reading']): Promise<Sought | null> {
  const { pictures, looking } = pyramidOf(await scanOf(slot))
  const at = placeOnEnd(slot, 1, 0.3, 2 / zoom)
  const wish: SearchWish = { as: 'end', reach: Math.max(4, NEAR / zoom), reading: round, either: true }
  return lookInStages([at], wish, pictures, looking)
}

describe('a round end that is pointed at once', () => {
  it.each([
    { zoom: 2, radius: 40, width: 3, tilt: TWENTY },
    { zoom: 1, radius: 180, width: 4, tilt: 0 },
    { zoom: 0.3, radius: 150, width: 6, tilt: TWENTY },
    { zoom: 0.15, radius: 120, width: 6, tilt: Math.PI / 2 },
  ])(
    'is found as it is in the scan, seen at $zoom of its size: $radius px, $width px wide',
    async ({ zoom, radius, width, tilt }) => {
      const slot = slotOf(radius, width, tilt)
      const { found, rough } = (await sought(slot, zoom, 'centre')) ?? {}
      if (found?.kind !== 'arc') throw new Error(`it is ${found?.kind}: ${JSON.stringify(found)}`)
      const [x, y] = endOf(slot, 1)
      expect(Math.hypot(found.centre[0] - x, found.centre[1] - y)).toBeLessThan(0.5)
      expect(Math.abs(found.radius - radius)).toBeLessThan(0.3)
      // By these it can be found again as any arc.
      expect(rough).toHaveLength(3)
      for (const [px, py] of rough ?? [])
        expect(Math.abs(Math.hypot(px - x, py - y) - radius)).toBeLessThan(4)
    },
  )

  it('is read at the edge that is wanted, close to and from far off', async () => {
    const slot = slotOf(100, 8, TWENTY)
    for (const zoom of [1, 0.3]) {
      const reading = { straight: 'centre', round: 'inner', from: AS_IT_LIES } as const
      const found = (await sought(slot, zoom, reading))?.found
      expect(found?.kind === 'arc' ? found.radius : found?.kind).toBeCloseTo(96, 0)
    }
  })

  it('says why there is none', async () => {
    const slot = slotOf(100, 3, 0)
    const { pictures, looking } = pyramidOf(await scanOf(slot))
    const wish: SearchWish = { as: 'end', reach: 8, reading: 'centre', either: true }
    const side = await lookInStages([pixel(550, 301)], wish, pictures, looking)
    expect(side?.found.kind === 'none' && 'code' in side.found.because && side.found.because.code).toBe(
      'stroke.no-round-end',
    )
  })
})
