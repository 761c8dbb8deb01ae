import { describe, expect, it } from 'vitest'
import { pyramidLevels } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { greyOfPixel, searchWindow } from '../../../src/core/imaging/index.ts'
import { cutWindows } from '../../../src/renderer/strokes/cut-windows.ts'
import { levelOfReach, strokeReach } from '../../../src/renderer/strokes/reach.ts'
import { tilesLookedAt } from '../../../src/renderer/strokes/tiles-looked-at.ts'
import { tileAddress } from '../../../src/renderer/tiles/addresses.ts'
import { type Tile, tilesOver } from '../../../src/renderer/tiles/wanted-tiles.ts'

const [WIDTH, HEIGHT] = [5000, 4000]
const pictures: SheetPictures = {
  sheet: 'S1',
  version: 'v',
  width: WIDTH,
  height: HEIGHT,
  overview: { width: 1000, height: 800 },
  levels: pyramidLevels(WIDTH, HEIGHT),
  exact: true,
  progress: { sheet: 'S1', state: 'ready', done: 1, sentence: '' },
}

const tilesOfBox = ([left, top, right, bottom]: [number, number, number, number]): Tile[] =>
  tilesOver({ left, top, right, bottom }, 0, pictures)

describe('the scan where a search looks at it', () => {
  it('has the grey of every pixel where it belongs, across the seams of tiles', () => {
    const greyAt = (x: number, y: number): number => (3 * x + 7 * y) % 251
    const box: [number, number, number, number] = [500, 1000, 530, 1040]
    const tiles = tilesOfBox(box)
    expect(tiles).toHaveLength(4)
    const greys = new Map(
      tiles.map((tile) => {
        const data = Uint8Array.from({ length: 512 * 512 }, (_, i) =>
          greyAt(tile.column * 512 + (i % 512), tile.row * 512 + Math.floor(i / 512)),
        )
        return [tileAddress(pictures, tile), { width: 512, height: 512, data }]
      }),
    )
    const windows = cutWindows(box, tiles, pictures, greys) ?? []
    expect(windows.map(({ left, top, width, height }) => [left, top, width, height])).toEqual([
      [500, 1000, 12, 24],
      [512, 1000, 18, 24],
      [500, 1024, 12, 16],
      [512, 1024, 18, 16],
    ])
    for (let y = 1000; y < 1040; y++)
      for (let x = 500; x < 530; x++) expect(greyOfPixel(windows, x, y)).toBe(greyAt(x, y))
    expect(greyOfPixel(windows, 530, 1000)).toBeNaN()
  })

  it('is none while a tile that is looked at is not there, rather than there in part', () => {
    const box: [number, number, number, number] = [500, 1000, 530, 1040]
    const [first, ...others] = tilesOfBox(box)
    const grey = { width: 512, height: 512, data: new Uint8Array(512 * 512) }
    const there = new Map(others.map((other) => [tileAddress(pictures, other), grey]))
    const cut = (tiles: Tile[]) => cutWindows(box, tiles, pictures, there)
    expect(first && cut([first, ...others])).toBeNull()
    expect(cut(others)).not.toBeNull()
  })

  it('along a line needs the tiles that the line runs over, and not those beside it', () => {
    const rough: Pixel[] = [pixel(100, 100), pixel(4900, 3900)]
    const all = tilesOfBox([0, 0, WIDTH, HEIGHT])
    const area = searchWindow(rough, 'line', { reach: 8, scan: pictures })
    const near = tilesLookedAt(area, pictures)
    expect(near.length).toBeLessThan(all.length / 2)
    for (let k = 0; k <= 100; k++) {
      const [x, y] = [100 + 48 * k, 100 + 38 * k]
      const length = Math.hypot(48, 38)
      // As far across the line as the search looks.
      for (const off of [-60, 60]) {
        const column = Math.floor((x - (38 / length) * off) / 512)
        const row = Math.floor((y + (48 / length) * off) / 512)
        if (column < 0 || row < 0 || column > 9 || row > 7) continue
        expect(near.some((tile) => tile.column === column && tile.row === row)).toBe(true)
      }
    }
  })
})

describe('how far a stroke is looked for', () => {
  it('is what the pointer means on the screen, and nowhere when that is half of the drawing', () => {
    expect(strokeReach(1, pictures)).toBe(8)
    expect(strokeReach(16, pictures)).toBe(4)
    expect(strokeReach(0.4, pictures)).toBe(20)
    expect(levelOfReach(16, pictures)).toBe(0)
    expect(levelOfReach(20, pictures)).toBe(1)
    expect(levelOfReach(16 * 2 ** 9, pictures)).toBeNull()
    expect(strokeReach(1, undefined)).toBeNull()
  })

  it('is no less than the coarse picture that is seen before the scan is there', () => {
    const begun = (state: 'overview' | 'tiles') => ({
      ...pictures,
      progress: { ...pictures.progress, state },
    })
    expect(strokeReach(4, begun('tiles'))).toBe(10)
    expect(strokeReach(4, { ...begun('overview'), overview: { width: 250, height: 200 } })).toBeNull()
  })
})
