import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pyramidLevels } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { applied, type Camera, toScreen } from '../../../src/renderer/camera/camera.ts'
import { overviewAddress, tileAddress } from '../../../src/renderer/tiles/addresses.ts'
import { layerMatrix, layerUnit } from '../../../src/renderer/tiles/layer-matrix.ts'
import { type LayerWanted, scanPlan } from '../../../src/renderer/tiles/scan-plan.ts'
import {
  type LevelInSight,
  levelInSight,
  mayHaveTiles,
  nameOfLevel,
  squaresFor,
} from '../../../src/renderer/tiles/shown-level.ts'

const MEGABYTE = 1024 * 1024
const SCAN = { width: 13_600, height: 17_600 }
const BOX = { width: 1000, height: 700 }

const pictures = (state: SheetPictures['progress']['state'] = 'ready'): SheetPictures => ({
  sheet: 'S1',
  ...SCAN,
  version: 'v',
  overview: { width: 1700, height: 2200 },
  levels: pyramidLevels(SCAN.width, SCAN.height),
  exact: true,
  progress: { sheet: 'S1', state, done: 0, sentence: '' },
})

const camera = (over: Partial<Camera> = {}): Camera => ({
  centre: pixel(6800, 8800),
  zoom: 1,
  turn: radians(0),
  mirror: false,
  ...over,
})

const frameOf = (look: Partial<Camera> = {}, state?: SheetPictures['progress']['state']) => ({
  pictures: pictures(state),
  camera: camera(look),
  box: BOX,
  density: 1,
})

const sightIn = (frame: ReturnType<typeof frameOf>): LevelInSight => {
  const sight = levelInSight(frame, 192 * MEGABYTE)
  if (sight === null) throw new Error('Nothing is in sight.')
  return sight
}

const addressesIn = (frame: ReturnType<typeof frameOf>): string[] =>
  sightIn(frame).tiles.map((tile) => tileAddress(frame.pictures, tile))

const keys = (plan: readonly LayerWanted[]): string[] => plan.map(({ key }) => key)

describe('what is in sight', () => {
  it('is the overview alone until tiles are being cut, and tiles from then on', () => {
    expect(mayHaveTiles(pictures('overview'))).toBe(false)
    expect(mayHaveTiles(pictures('tiles'))).toBe(true)
    expect(levelInSight(frameOf({}, 'overview'), 192 * MEGABYTE)).toBeNull()
    expect(levelInSight(frameOf({}, 'tiles'), 192 * MEGABYTE)?.of.level).toBe(0)
  })

  it('is a coarser level where the finer one is more than can be kept', () => {
    expect(levelInSight(frameOf(), 8 * MEGABYTE)?.of.level).toBeGreaterThan(0)
  })

  it('has another name when another tile comes into sight, and the same while none does', () => {
    const here = nameOfLevel(sightIn(frameOf({ centre: pixel(6800, 8800) })))
    expect(nameOfLevel(sightIn(frameOf({ centre: pixel(6803, 8801) })))).toBe(here)
    expect(nameOfLevel(sightIn(frameOf({ centre: pixel(7400, 8800) })))).not.toBe(here)
    expect(nameOfLevel(sightIn(frameOf({ zoom: 0.5 })))).not.toBe(here)
  })

  it('has what is so near that it may be in sight next, and another name when that changes', () => {
    const names = new Set<string>()
    for (let x = 6800; x < 6800 + 512; x += 4) {
      const sight = sightIn(frameOf({ centre: pixel(x, 8800) }))
      names.add(nameOfLevel(sight))
      for (const tile of sight.tiles) expect(sight.around).toContainEqual(tile)
      const seen = Math.max(...sight.tiles.map(({ column }) => column)) + 1
      const ahead = seen * 512 - (x + BOX.width / 2)
      expect(sight.around.some(({ column }) => column === seen)).toBe(ahead < 256)
    }
    // One comes into sight and one goes, one comes near and one is near no more.
    expect(names.size).toBeGreaterThanOrEqual(4)
  })

  it('has its pixels as squares from three screen pixels on', () => {
    const sharp = (zoom: number): boolean => sightIn(frameOf({ zoom })).sharp
    expect([0.1, 1, 1.37, 3, 3.01, 60].map(sharp)).toEqual([false, false, false, false, true, true])
  })

  it('is drawn so large that the browser only ever makes it smaller, by no more than half', () => {
    expect([0.6, 1, 1.01, 2, 3, 5].map(squaresFor)).toEqual([1, 1, 2, 2, 4, 8])
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 64, noNaN: true }), (zoom) => {
        const { of, squares } = sightIn(frameOf({ zoom }))
        const scale = (zoom * 2 ** of.level) / squares
        expect(scale).toBeLessThanOrEqual(1 + 1e-6)
        if (of.level < frameOf().pictures.levels.length - 1) expect(scale).toBeGreaterThan(0.5)
      }),
    )
  })
})

describe('what stands on the screen', () => {
  it('is the wanted level alone, with what there is round it, once all in sight is there', () => {
    const frame = frameOf()
    const plan = scanPlan(frame, sightIn(frame), () => true, [])
    expect(keys(plan)).toEqual(['0:1'])
    const shown = plan[0]?.pictures.map(({ address }) => address) ?? []
    for (const address of addressesIn(frame)) expect(shown).toContain(address)
    expect(shown.length).toBeGreaterThan(addressesIn(frame).length)
  })

  it('is the overview under what there is while anything is missing', () => {
    const frame = frameOf()
    const [first = ''] = addressesIn(frame)
    const there = new Set([overviewAddress(frame.pictures), first])
    const plan = scanPlan(frame, sightIn(frame), (address) => there.has(address), [])
    expect(keys(plan)).toEqual(['overview', '0:1'])
  })

  it('keeps the level that was shown before under the new one until that is whole', () => {
    const before = frameOf({ zoom: 0.5 })
    const old = scanPlan(before, sightIn(before), () => true, [])
    const held = new Set(old.flatMap((layer) => layer.pictures.map(({ address }) => address)))
    const now = frameOf({ zoom: 1 })
    const half = addressesIn(now).slice(0, 2)
    const has = (address: string): boolean => held.has(address) || half.includes(address)
    const plan = scanPlan(now, sightIn(now), has, old)
    expect(keys(plan).sort()).toEqual(['0:1', '1:1'])
    const orders = Object.fromEntries(plan.map(({ key, order }) => [key, order]))
    expect(orders['0:1']).toBeGreaterThan(orders['1:1'] ?? Infinity)
    expect(keys(scanPlan(now, sightIn(now), () => true, plan))).toEqual(['0:1'])
  })

  it('takes the nearest coarser picture that is there for a tile that is missing', () => {
    const frame = frameOf()
    const parent = tileAddress(frame.pictures, { level: 3, column: 1, row: 2 })
    const coarse = scanPlan(frame, sightIn(frame), (address) => address === parent, [])
    expect(keys(coarse)).toEqual(['3:1'])
  })

  it('puts every picture in one place only', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.integer({ min: 2, max: 9 }),
        (from, to, some) => {
          const [before, now] = [frameOf({ zoom: from }), frameOf({ zoom: to })]
          const has = (address: string): boolean =>
            address.length % some !== 0 || address.includes('overview')
          const plan = scanPlan(now, sightIn(now), has, scanPlan(before, sightIn(before), has, []))
          const all = plan.flatMap((layer) => layer.pictures.map(({ address }) => address))
          expect(new Set(all).size).toBe(all.length)
        },
      ),
    )
  })
})

describe('a layer of pictures', () => {
  it('lies where the camera has the scan, turned and mirrored, to a thousandth of a screen pixel', () => {
    fc.assert(
      fc.property(
        fc.record({
          zoom: fc.double({ min: 0.02, max: 64, noNaN: true }),
          turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }).map(radians),
          mirror: fc.boolean(),
        }),
        fc.constantFrom(1, 1.25, 2),
        fc.constantFrom(1, 2, 16),
        fc.constantFrom(1, 4, 64),
        fc.double({ min: 0, max: SCAN.width, noNaN: true }),
        fc.double({ min: 0, max: SCAN.height, noNaN: true }),
        (look, density, step, squares, x, y) => {
          const unit = layerUnit([step, step], squares, density)
          const at = applied(layerMatrix(camera(look), BOX, unit), pixel(x * unit[0], y * unit[1]))
          const wanted = toScreen(camera(look), BOX, pixel(x, y))
          expect(Math.hypot(at[0] - wanted[0], at[1] - wanted[1])).toBeLessThan(1e-3)
        },
      ),
    )
  })

  it('has each pixel of its pictures on whole pixels of the screen before it is zoomed', () => {
    const [across] = layerUnit([4, 4], 1, 1.25)
    expect(512 * 4 * across * 1.25).toBeCloseTo(512, 9)
  })
})
