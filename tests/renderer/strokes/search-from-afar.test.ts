import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { lookInStages } from '../../../src/renderer/strokes/search-scan.ts'
import type { SearchWish } from '../../../src/renderer/strokes/search-wish.ts'
import { inWords } from '../../../src/renderer/words/window-words.ts'
import { caseStream } from '../../core/imaging/simulate/case-stream.ts'
import { pyramidOf } from './pyramid-of.ts'

const [WIDTH, HEIGHT] = [1500, 1000]
/** How far a hand is astray on the screen, CSS pixels, and how far a stroke may be from it. */
const ASTRAY = 2
const NEAR = 8
const TRIALS = 2

/** A scan of what is black wherever its distance from a pixel is small. */
function scanOf(distance: (x: number, y: number) => number, width: number, random: RandomStream): GreyWindow {
  const data = new Uint8Array(WIDTH * HEIGHT)
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const ink = Math.max(0, Math.min(1, (width / 2 - distance(x + 0.5, y + 0.5) + 0.8) / 1.6))
      data[y * WIDTH + x] = Math.round(235 - 190 * ink + 16 * (random.uniform() - 0.5))
    }
  }
  return { left: 0, top: 0, width: WIDTH, height: HEIGHT, data }
}

const wish = (as: SearchWish['as'], zoom: number): SearchWish => ({
  as,
  reach: NEAR / zoom,
  reading: { straight: 'centre', round: 'centre', from: AS_IT_LIES },
  either: as === 'circle',
})

/** The radius that is found where a rim was pointed at from far off; null where none is taken. */
async function radiusFound(
  zoom: number,
  wall: number,
  random: RandomStream,
): Promise<[true_: number, found: number | null]> {
  const [cx, cy] = [700 + 10 * random.uniform(), 500 + 10 * random.uniform()]
  const radius = 120 + 300 * random.uniform()
  // The same rim twice where there is one. By the square root: `hypot` guards against sizes that no pixel has, slowly.
  const toRims = (x: number, y: number): number => {
    const far = Math.sqrt((x - cx) ** 2 + (y - cy) ** 2)
    return Math.min(Math.abs(far - radius), Math.abs(far - (radius - wall)))
  }
  const scan = scanOf(toRims, 3 + 2 * random.uniform(), random)
  const { pictures, looking } = pyramidOf(scan)
  const from = 2 * Math.PI * random.uniform()
  const rough = [0, 2.1, 4.2].map((way): Pixel => {
    const far = radius + (ASTRAY / zoom) * random.normal()
    return pixel(cx + far * Math.cos(from + way), cy + far * Math.sin(from + way))
  })
  const sought = await lookInStages(rough, wish('circle', zoom), pictures, looking)
  const found = sought?.found
  return [radius, found?.kind === 'circle' || found?.kind === 'arc' ? found.radius : null]
}

describe('a stroke that is pointed at from far off', () => {
  it.each([0.35, 0.22, 0.14])('is found as it is in the scan, at %s of its size', async (zoom) => {
    for (let k = 0; k < TRIALS; k++) {
      const [radius, found] = await radiusFound(zoom, 0, caseStream(100 * zoom + k))
      expect(Math.abs((found ?? 0) - radius)).toBeLessThan(0.5)
    }
  })

  it.each([0.35, 0.22, 0.14])(
    'is none where two rims lie within the reach of a hand, at %s',
    async (zoom) => {
      for (let k = 0; k < TRIALS; k++) {
        const [, found] = await radiusFound(zoom, 9, caseStream(200 + 100 * zoom + k))
        expect(found).toBeNull()
      }
    },
  )

  it('is a line as well, and a place on one, with what crosses it left aside', async () => {
    const random = caseStream(31)
    const slant = Math.hypot(1, 0.05)
    const across = (x: number, y: number) => Math.abs(y - 400 - 0.05 * x) / slant
    const scan = scanOf((x, y) => Math.min(across(x, y), Math.abs(x - 900), Math.abs(x - 925)), 4, random)
    const { pictures, looking } = pyramidOf(scan)
    const ends = [pixel(300, 415 + 12), pixel(1400, 470 - 9)]
    const line = (await lookInStages(ends, wish('line', 0.2), pictures, looking))?.found
    if (line?.kind !== 'line') throw new Error(`It is found as ${line?.kind}.`)
    for (const [x, y] of line.ends) expect(across(x, y)).toBeLessThan(0.3)
    const place = (await lookInStages([pixel(500, 425 + 14)], wish('point', 0.2), pictures, looking))?.found
    if (place?.kind !== 'point') throw new Error(`It is found as ${place?.kind}.`)
    expect(across(place.pixel[0], place.pixel[1])).toBeLessThan(0.3)
  })

  it('is none where only one is seen that lies too far from the hand to be surely meant', async () => {
    const random = caseStream(32)
    // What is meant is too faint from so far off; another lies almost at the end of a hand's reach.
    const scan = scanOf((_, y) => Math.abs(y - 474), 5, random)
    const { pictures, looking } = pyramidOf(scan)
    const at = async (off: number) =>
      (await lookInStages([pixel(700, 474 - off)], wish('point', 0.15), pictures, looking))?.found
    expect(await at(14)).toMatchObject({ kind: 'point' })
    expect(await at(48)).toMatchObject({ kind: 'none', because: { code: 'search.two-strokes' } })
  })

  it('says in pixels of the scan how far it was looked for', async () => {
    const scan = scanOf(() => 100, 3, caseStream(33))
    const { pictures, looking } = pyramidOf(scan)
    const found = (await lookInStages([pixel(700, 500)], wish('point', 0.2019), pictures, looking))?.found
    if (found?.kind !== 'none') throw new Error(`It is found as ${found?.kind}.`)
    expect(inWords(found.because)).toContain('within 39.6 px')
  })
})
