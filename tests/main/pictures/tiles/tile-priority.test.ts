import { describe, expect, test } from 'vitest'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import { areaOf, blockAbout, levelsOfBlock } from '../../../../src/main/services/pictures/layout/block.ts'
import { isSooner, readingPace } from '../../../../src/main/services/pictures/tiles/tile-priority.ts'

const PAGE = { width: 13_600, height: 17_600 }
const LEVELS = pyramidLevels(PAGE.width, PAGE.height)

function areaAt(level: number, column: number, row: number) {
  const found = LEVELS[level]
  if (found === undefined) throw new Error('no such level')
  return areaOf(blockAbout({ level, column, row }, found), PAGE)
}

/** A scan that takes two seconds to read and is cut in eight. */
const READ = 2000
const CUT = 8000

describe('whether a tile is made out of turn', () => {
  test('is: far down a scan of which little is cut', () => {
    expect(isSooner(areaAt(0, 20, 30), PAGE, { read: READ, cutFor: 0.1 * CUT, cut: 0.1 })).toBe(true)
  })

  test('is not: where the cutting will be in a moment, or was', () => {
    for (const cut of [0.1, 0.5, 0.85]) {
      const row = Math.floor((cut * PAGE.height) / 512)
      expect(isSooner(areaAt(0, 20, row), PAGE, { read: READ, cutFor: cut * CUT, cut })).toBe(false)
    }
  })

  test('is: anywhere, while the sheet waits for its turn to be cut', () => {
    for (const row of [0, 15, 34]) {
      expect(isSooner(areaAt(0, 3, row), PAGE, { read: READ, cutFor: undefined, cut: 0 })).toBe(true)
    }
  })

  test('is not: of a level so coarse that it would be nearly the whole sheet over again', () => {
    const coarse = LEVELS.at(-1)?.level ?? 0
    expect(isSooner(areaAt(coarse, 0, 0), PAGE, { read: READ, cutFor: undefined, cut: 0 })).toBe(false)
  })

  test('follows what reading down to a part has shown to take: of a tiled file next to nothing', () => {
    const area = areaAt(0, 20, 33)
    expect(readingPace(area, PAGE, 500)).toBeLessThan(100)
    // Two seconds of reading, a start, and the tiles of the block, beside the cutting.
    expect(readingPace(area, PAGE, 3200)).toBeGreaterThan(1500)
    const now = { cutFor: 0.75 * CUT, cut: 0.75 }
    expect(isSooner(area, PAGE, { ...now, read: READ })).toBe(false)
    expect(isSooner(area, PAGE, { ...now, read: readingPace(area, PAGE, 500) })).toBe(true)
  })
})

describe('the block round a tile', () => {
  test('lies within the page, has the tile in it, and is large enough to have the level of the tile', () => {
    for (const page of [
      PAGE,
      { width: 1025, height: 513 },
      { width: 4097, height: 4097 },
      { width: 2049, height: 1 },
    ]) {
      const levels = pyramidLevels(page.width, page.height)
      for (const { level, columns, rows } of levels) {
        for (const column of [0, Math.floor(columns / 2), columns - 1]) {
          for (const row of [0, rows - 1]) {
            const block = blockAbout({ level, column, row }, { level, columns, rows, width: 0, height: 0 })
            const area = areaOf(block, page)
            expect(column).toBeGreaterThanOrEqual(block.columns[0])
            expect(column).toBeLessThan(block.columns[1])
            expect(row).toBeGreaterThanOrEqual(block.rows[0])
            expect(row).toBeLessThan(block.rows[1])
            expect(area.left + area.width).toBeLessThanOrEqual(page.width)
            expect(area.top + area.height).toBeLessThanOrEqual(page.height)
            expect(Math.min(area.width, area.height)).toBeGreaterThan(0)
            expect(levelsOfBlock(area)).toBeGreaterThan(level)
          }
        }
      }
    }
  })
})
