import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { cumulate, fillBars, PER_PIXEL } from '../../../../src/core/imaging/filter/bar-filter.ts'
import { columnsFor } from '../../../../src/core/imaging/filter/bar-grid.ts'
import { OrientedFilter } from '../../../../src/core/imaging/filter/oriented-filter.ts'
import { parallelRidges } from '../../../../src/core/imaging/filter/ridge-score.ts'
import { type Look, PLAIN_LOOK } from '../simulate/look.ts'
import { cleanPicture } from '../simulate/scan-of.ts'
import { acrossOf, bar } from '../simulate/shapes.ts'

const SIDE = 60
const MOST = 4
const WAYS = { from: -10, count: 4, size: 5, half: 16, mostOf: () => MOST, widest: 9 }
const COLUMNS = columnsFor(-WAYS.half, WAYS.half)
const LOOK: Look = { ...PLAIN_LOOK, width: 6, blur: 0.5 }
/** Where the window lies in its scan. */
const [LEFT, TOP] = [100, 40] as const

/** A stroke in a window, through its middle. */
function windowOf(direction: number, width: number) {
  const strokes = [bar(pixel(SIDE / 2, SIDE / 2), direction, width)]
  const { data } = cleanPicture({ width: SIDE, height: SIDE, strokes }, LOOK)
  return { left: LEFT, top: TOP, width: SIDE, height: SIDE, data: Float32Array.from(data) }
}

const MIDDLE = pixel(LEFT + SIDE / 2, TOP + SIDE / 2)

describe('bars along a way by a place', () => {
  it('are of the pixels whose foot on it lies in each piece, by where they are across', () => {
    const grey = windowOf(1.1, 6)
    grey.data.forEach((v, i) => {
      grey.data[i] = v + ((i * 7919) % 23)
    })
    for (const direction of [0.4, 2, -2.7]) {
      const at = pixel(LEFT + 31.17, TOP + 28.61)
      const total = new Float64Array(WAYS.count * COLUMNS)
      const count = new Uint16Array(WAYS.count * COLUMNS)
      grey.data.forEach((v, i) => {
        const [x, y] = [LEFT + (i % SIDE) + 0.5 - at[0], TOP + Math.floor(i / SIDE) + 0.5 - at[1]]
        const along = x * Math.cos(direction) + y * Math.sin(direction)
        const across = y * Math.cos(direction) - x * Math.sin(direction)
        const piece = Math.floor((along - WAYS.from) / WAYS.size)
        if (piece < 0 || piece >= WAYS.count || Math.abs(across) > WAYS.half) return
        const bin = piece * COLUMNS + Math.floor((across + WAYS.half) * PER_PIXEL)
        total[bin] = (total[bin] ?? 0) + v
        count[bin] = (count[bin] ?? 0) + 1
      })
      const grid = new OrientedFilter(grey, WAYS).along(at, direction)
      expect(grid.there).toEqual([true, true, true, true])
      expect(grid.layers.map((l) => l.width)).toEqual([1.5, 2.5, 4, 6, 9])
      const sums = new Float64Array(COLUMNS + 1)
      for (const { width, bars } of grid.layers)
        for (let k = 0; k < WAYS.count; k++) {
          const own = new Float32Array(COLUMNS)
          cumulate({ total, count }, k * COLUMNS, COLUMNS, sums)
          fillBars(sums, COLUMNS, width, own, 0, { first: 0, last: COLUMNS - 1, step: 1 })
          for (let o = -MOST; o <= MOST; o++) {
            const column = (o + WAYS.half) * PER_PIXEL
            expect(bars[k * COLUMNS + column]).toBeCloseTo(own[column] ?? Number.NaN, 3)
          }
        }
    }
  })

  it('leave out the pieces that are not in the picture', () => {
    const filter = new OrientedFilter(windowOf(0, 6), WAYS)
    // Of the second piece two columns of five.
    expect(filter.along(pixel(LEFT + 2, MIDDLE[1]), 0).there).toEqual([false, false, true, true])
    expect(filter.along(pixel(LEFT + 2, MIDDLE[1]), Math.PI).there).toEqual([true, true, false, false])
    expect(filter.along(MIDDLE, 0).there).toEqual([true, true, true, true])
  })
})

describe('of the ways by a place the strongest', () => {
  /** The strongest way: turns by a twentieth of a radian, whole pixels across, all widths. */
  function strongest(grey: ReturnType<typeof windowOf>, at: typeof MIDDLE) {
    const filter = new OrientedFilter(grey, WAYS)
    const strengths = new Float64Array(2 * MOST + 1)
    let best = { turn: Number.NaN, offset: Number.NaN, width: Number.NaN, contrast: Number.NaN, strength: 0 }
    for (let turn = 0; turn < 62; turn++) {
      const grid = filter.along(at, turn / 20)
      for (const ridge of parallelRidges({ grid, length: 20, noise: 1 }, MOST, strengths)) {
        if (ridge && ridge.strength > best.strength)
          best = { ...ridge, turn, offset: ridge.steer[0] ?? Number.NaN }
      }
    }
    return best
  }

  it.each([
    [4, 14],
    [6, 14],
    [9, 14],
    [6, 25],
    [6, 40],
  ])('is that of the stroke drawn, %s px wide at %s/20 rad', (width, turn) => {
    const found = strongest(windowOf(turn / 20, width), MIDDLE)
    expect(found).toMatchObject({ turn, width })
    expect(found.offset).toBeCloseTo(0, 9)
    // The soft edges take a little off the mean over its width.
    expect(found.contrast).toBeLessThan(-0.8 * LOOK.contrast)
    expect(found.contrast).toBeGreaterThan(-LOOK.contrast)
  })

  it('lies as far to the right of the place as the stroke does', () => {
    const [nx, ny] = acrossOf(0.7)
    const beside = pixel(MIDDLE[0] - 3 * nx, MIDDLE[1] - 3 * ny)
    expect(strongest(windowOf(0.7, 6), beside)).toMatchObject({ turn: 14, width: 6, offset: 3 })
  })
})
