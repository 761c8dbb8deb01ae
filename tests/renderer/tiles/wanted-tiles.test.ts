import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pyramidLevels, TILE } from '../../../src/contract/picture-pyramid.ts'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel, screen } from '../../../src/core/geometry/frames.ts'
import type { Camera } from '../../../src/renderer/camera/camera.ts'
import { toPixel } from '../../../src/renderer/camera/camera.ts'
import { coarser, levelFor, tileExtent, tilesInSight } from '../../../src/renderer/tiles/wanted-tiles.ts'

const SCAN = { width: 13_600, height: 17_600 }
const BOX = { width: 1000, height: 700 }
const LEVELS = pyramidLevels(SCAN.width, SCAN.height)

const camera = (over: Partial<Camera>): Camera => ({
  centre: pixel(6800, 8800),
  zoom: 1,
  turn: radians(0),
  mirror: false,
  ...over,
})

describe('the level of a pyramid that is shown', () => {
  it('is the scan itself from actual pixels on', () => {
    expect(levelFor(1, LEVELS)).toBe(0)
    expect(levelFor(40, LEVELS)).toBe(0)
  })

  it('has at least one pixel for each of the screen, but for a sixth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.03, max: 1, noNaN: true }), (zoom) => {
        const level = levelFor(zoom, LEVELS)
        expect(zoom * 2 ** level).toBeLessThanOrEqual(1.15)
        if (level < LEVELS.length - 1) expect(zoom * 2 ** (level + 1)).toBeGreaterThan(1.15)
      }),
    )
  })

  it('is the coarsest when the sheet is very small', () => {
    expect(levelFor(1e-4, LEVELS)).toBe(LEVELS.length - 1)
  })
})

describe('the tiles in sight', () => {
  const finest = LEVELS[0] as (typeof LEVELS)[number]

  it('are those under the box, nearest to its middle first', () => {
    const tiles = tilesInSight(camera({ centre: pixel(768, 768) }), { width: 512, height: 512 }, finest)
    expect(tiles).toEqual([{ level: 0, column: 1, row: 1 }])
    const more = tilesInSight(camera({ centre: pixel(760, 768) }), { width: 600, height: 512 }, finest)
    expect(more[0]).toEqual({ level: 0, column: 1, row: 1 })
    expect(more.map(({ column }) => column).sort()).toEqual([0, 1, 2])
  })

  it('take one more on every side with a ring', () => {
    const box = { width: 512, height: 512 }
    expect(tilesInSight(camera({ centre: pixel(2816, 2816) }), box, finest, 1)).toHaveLength(9)
  })

  it('take with a part of a ring those that reach so near, and no others', () => {
    const box = { width: 100, height: 100 }
    const columns = (x: number): number[] => {
      const tiles = tilesInSight(camera({ centre: pixel(x, 2816) }), box, finest, 0.5)
      return [...new Set(tiles.map(({ column }) => column))].sort()
    }
    // The fifth tile goes from 2560 to 3072: 206 px to either side, then 10 and 402, then 302 and 110.
    expect(columns(2816)).toEqual([4, 5, 6])
    expect(columns(2620)).toEqual([4, 5])
    expect(columns(2912)).toEqual([5, 6])
  })

  it('end at the edges of the sheet', () => {
    const tiles = tilesInSight(camera({ centre: pixel(0, 0) }), BOX, finest, 1)
    expect(tiles.every(({ column, row }) => column >= 0 && row >= 0)).toBe(true)
    expect(tiles.some(({ column, row }) => column === 0 && row === 0)).toBe(true)
  })

  it('leave nothing in sight uncovered, turned and mirrored as may be', () => {
    fc.assert(
      fc.property(
        fc.record({
          turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }).map(radians),
          mirror: fc.boolean(),
          zoom: fc.double({ min: 0.05, max: 3, noNaN: true }),
        }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 700, noNaN: true }),
        (look, x, y) => {
          const here = camera(look)
          const level = LEVELS[levelFor(look.zoom, LEVELS)] as (typeof LEVELS)[number]
          const [px, py] = toPixel(here, BOX, screen(x, y))
          if (px < 0 || py < 0 || px >= SCAN.width || py >= SCAN.height) return
          const covered = tilesInSight(here, BOX, level).some((tile) => {
            const { left, top, right, bottom } = tileExtent(tile, level)
            return px >= left - 1e-6 && px <= right + 1e-6 && py >= top - 1e-6 && py <= bottom + 1e-6
          })
          expect(covered).toBe(true)
        },
      ),
    )
  })

  it('are few even when the sheet is turned: no corner of the upright box that is not seen', () => {
    const turned = tilesInSight(camera({ turn: radians(Math.PI / 4) }), { width: 4000, height: 300 }, finest)
    const seen = (4000 * 300) / TILE ** 2
    expect(turned.length).toBeLessThan(6 * seen)
  })

  it('cover the sheet to its last pixel at every level, odd sizes too', () => {
    for (const [width, height] of [
      [13_600, 17_600],
      [5200, 3420],
      [1001, 777],
    ] as const) {
      for (const level of pyramidLevels(width, height)) {
        const last = { level: level.level, column: level.columns - 1, row: level.rows - 1 }
        const { right, bottom } = tileExtent(last, level)
        for (const [edge, size] of [
          [right, width],
          [bottom, height],
        ] as const) {
          expect(edge).toBeGreaterThanOrEqual(size)
          expect(edge).toBeLessThan(size + 2 ** level.level)
        }
      }
    }
  })

  it('lie each in one tile of the next coarser level', () => {
    expect(coarser({ level: 0, column: 5, row: 6 }, 2)).toEqual({ level: 2, column: 1, row: 1 })
  })
})
