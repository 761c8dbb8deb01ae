import { describe, expect, test } from 'vitest'
import { windowAbout } from '../../../src/main/services/reading/page/window-about.ts'
import { partsOf } from '../../../src/main/services/reading/whole/page-parts.ts'

describe('the parts in which a page is looked at', () => {
  test.each([
    [{ width: 9933, height: 7016 }, 300, 1],
    [{ width: 9933, height: 7016 }, undefined, 1],
    [{ width: 12_000, height: 8400 }, 400, 1],
    [{ width: 4000, height: 3000 }, 200, 0],
    [{ width: 4000, height: 3000 }, 72, 0],
    [{ width: 40_000, height: 30_000 }, 1200, 3],
    [{ width: 1, height: 1 }, undefined, 0],
  ])('of %o at %s dpi are of level %s, cover it without a gap, and are small', (page, dpi, level) => {
    const parts = partsOf(page, dpi)
    expect(parts.level).toBe(level)
    const [across, down] = [page.width, page.height].map((side) => Math.ceil(side / 2 ** level))
    expect(parts.rows[0]?.from).toBe(0)
    expect(parts.rows.at(-1)?.to).toBe(down)
    for (const [i, { from, to }] of parts.rows.entries()) {
      expect(from).toBe(parts.rows[i - 1]?.to ?? 0)
      expect((to - from) * (across ?? 0)).toBeLessThan(4_100_000)
    }
  })
})

describe('the window about a box', () => {
  test('holds it, turned and upright, with room, and ends at the edges of the page', () => {
    const page = { width: 1000, height: 800 }
    const box = { x: 400, y: 300, width: 200, height: 40, angle: -90 }
    expect(windowAbout(box, page)).toEqual({ left: 350, top: 170, width: 300, height: 300 })
    expect(windowAbout({ x: -10, y: 790, width: 40, height: 40 }, page)).toEqual({
      left: 0,
      top: 774,
      width: 46,
      height: 26,
    })
  })
})
