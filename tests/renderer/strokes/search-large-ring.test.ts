import { expect, it } from 'vitest'
import { TILE } from '../../../src/contract/picture-pyramid.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { LARGEST_WINDOW } from '../../../src/core/imaging/index.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { lookInStages } from '../../../src/renderer/strokes/search-scan.ts'
import { caseStream } from '../../core/imaging/simulate/case-stream.ts'
import { sheetWithRing } from './sheet-with-ring.ts'

const RADIUS = 4300.4

it('a circle whose box is more than can be looked over is found in the scan as it is, by the tiles that it passes', async () => {
  expect((2 * RADIUS) ** 2).toBeGreaterThan(LARGEST_WINDOW)
  const random = caseStream(41)
  const centre = pixel(4700.3, 4600.8)
  const sheet = { width: 9400, height: 9200, centre, radius: RADIUS, stroke: 5, noise: 4 }
  const { pictures, looking, fetched } = sheetWithRing(sheet, random)
  // The sheet at a sixteenth of its size, where a hand comes within two pixels of the screen.
  const rough = [0.2, 2.4, 4.3].map((angle) => {
    const away = RADIUS + 32 * (2 * random.uniform() - 1)
    return pixel(centre[0] + away * Math.cos(angle), centre[1] + away * Math.sin(angle))
  })
  const reading = { straight: 'centre', round: 'centre', from: AS_IT_LIES } as const
  const sought = await lookInStages(
    rough,
    { as: 'circle', reach: 128, reading, either: true },
    pictures,
    looking,
  )
  const found = sought?.found
  if (found?.kind !== 'circle') throw new Error(`It is found as ${found?.kind}.`)
  const stated = Math.sqrt(found.covariance[5])
  // Of a picture of half the size it could not be told so surely.
  expect(stated).toBeLessThan(0.005)
  expect(Math.abs(found.radius - RADIUS)).toBeLessThan(4 * stated)
  expect(found.shape.width).toBeCloseTo(5, 1)
  const finest = fetched.get(0)
  // The tiles along it are some 1.5 times as many as its length has sides of a tile.
  expect(finest?.tiles).toBeLessThan((1.7 * 2 * Math.PI * RADIUS) / TILE)
  expect([...fetched.keys()].filter((level) => level > 0)).toEqual([3])
})
