import { describe, expect, test } from 'vitest'
import { groundOf } from '../../../../src/main/services/pictures/pyramid/ground.ts'

const WIDTH = 1600
const HEIGHT = 1000
const CELLS = { width: 192, height: 120 }

/** Paper that darkens from left to right and has a brown stain. */
const paperAt = (x: number, y: number): number => {
  const stain = 50 * Math.exp(-((x - 500) ** 2 + (y - 400) ** 2) / (2 * 150 ** 2))
  return 235 - (40 * x) / WIDTH - stain
}

/** Lines three pixels wide, every forty, both ways: a closely drawn sheet. */
const isInk = (x: number, y: number): boolean => x % 40 < 3 || y % 40 < 3

function sheet(valueAt: (x: number, y: number) => number): Uint8Array {
  const data = new Uint8Array(WIDTH * HEIGHT)
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) data[y * WIDTH + x] = Math.round(valueAt(x, y))
  return data
}

const groundOfSheet = (valueAt: (x: number, y: number) => number) =>
  groundOf({ data: sheet(valueAt), width: WIDTH, height: HEIGHT }, CELLS)

/** Ground less paper, at the middle of each cell. */
function misses(ground: { data: Uint8Array }): number[] {
  return Array.from(ground.data, (value, i) => {
    const x = ((i % CELLS.width) + 0.5) * (WIDTH / CELLS.width)
    const y = (Math.floor(i / CELLS.width) + 0.5) * (HEIGHT / CELLS.height)
    return value - paperAt(x, y)
  })
}

describe('the ground of a sheet', () => {
  test('is its paper, stain and uneven light and all, without the lines that are drawn on it', () => {
    const ground = groundOfSheet((x, y) => (isInk(x, y) ? 40 : paperAt(x, y)))
    expect([ground.width, ground.height]).toEqual([192, 120])
    const off = misses(ground)
    // The brightest nearby value lies above the paper where the paper slopes: by REACH cells of the steepest slope.
    expect(Math.min(...off)).toBeGreaterThan(-2)
    expect(Math.max(...off)).toBeLessThan(10)
  })

  test('is not darkened by a solid black of a few millimetres, as a section through a thin plate is drawn', () => {
    const bar = (x: number, y: number): boolean => Math.abs(x - 1200) < 12 && y > 200 && y < 800
    const ground = groundOfSheet((x, y) => (bar(x, y) ? 20 : paperAt(x, y)))
    expect(Math.min(...misses(ground))).toBeGreaterThan(-6)
  })

  test('of blank paper is the paper', () => {
    expect(new Set(groundOfSheet(() => 231).data)).toEqual(new Set([231]))
  })

  test('of a sheet smaller than the cells asked for is as large as the sheet', () => {
    const { data } = groundOf(
      { data: Uint8Array.of(200, 210, 220), width: 3, height: 1 },
      { width: 3, height: 1 },
    )
    expect(data).toHaveLength(3)
  })
})
