import { describe, expect, it } from 'vitest'
import { pyramidLevels, TILE } from '../../src/contract/picture-pyramid.ts'

describe('the pyramid of a scan', () => {
  it('halves from full size down to one tile', () => {
    const levels = pyramidLevels(13_600, 17_600)
    expect(levels[0]).toEqual({ level: 0, width: 13_600, height: 17_600, columns: 27, rows: 35 })
    expect(levels.at(-1)).toMatchObject({ columns: 1, rows: 1 })
    for (const [k, level] of levels.entries()) {
      expect(level.width).toBe(Math.ceil(13_600 / 2 ** k))
      expect(level.columns * TILE).toBeGreaterThanOrEqual(level.width)
      expect((level.columns - 1) * TILE).toBeLessThan(level.width)
    }
  })

  it('is a single step for a picture of one tile', () => {
    expect(pyramidLevels(512, 40)).toEqual([{ level: 0, width: 512, height: 40, columns: 1, rows: 1 }])
  })
})
