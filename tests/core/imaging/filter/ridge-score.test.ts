import { describe, expect, it } from 'vitest'
import { groundReach, PER_PIXEL } from '../../../../src/core/imaging/filter/bar-filter.ts'
import { type BarGrid, columnsFor, emptyGrid } from '../../../../src/core/imaging/filter/bar-grid.ts'
import {
  climbRidge,
  distinct,
  parallelRidges,
  type Ridge,
  scoreRidge,
} from '../../../../src/core/imaging/filter/ridge-score.ts'
import { caseStream } from '../simulate/case-stream.ts'

const LOW = -8
const COLUMNS = columnsFor(LOW, -LOW)
const LENGTH = 45
const NOISE = 5

/** A grid whose bars are what is said of them: widths 1.5, 2.5 and 4. */
function gridOf(pieces: number, bar: (width: number, piece: number, across: number) => number): BarGrid {
  const grid = emptyGrid(pieces, LOW, COLUMNS, 4)
  for (const { width, bars } of grid.layers)
    for (let k = 0; k < pieces; k++)
      for (let c = 0; c < COLUMNS; c++) bars[k * COLUMNS + c] = bar(width, k, LOW + c / PER_PIXEL)
  grid.there.fill(true)
  return grid
}

const on = (grid: BarGrid) => ({ grid, length: LENGTH, noise: NOISE })

/** Signal to noise: the mean of so much ink less the mean of so much ground, each of white noise. */
const strengthOf = (contrast: number, width: number, length: number): number =>
  Math.abs(contrast) / (NOISE * Math.sqrt(1 / (width * length) + 1 / (groundReach(width) * length)))

/** The highest contrast that more than half of the values reach, of either sign; tried one by one. */
function reachedByHalf(values: readonly number[]): number {
  let best = 0
  for (const sign of [-1, 1])
    for (const v of values) {
      const reaching = values.filter((w) => sign * w >= Math.abs(v)).length
      if (reaching > Math.floor(values.length / 2) && Math.abs(v) > Math.abs(best)) best = sign * Math.abs(v)
    }
  return best
}

describe('the score of a way', () => {
  /** What each piece shows at 0 of a bar 4 px wide; none at other places or widths. */
  const showing = (values: readonly number[]) =>
    gridOf(values.length, (width, k, t) => (width === 4 && t === 0 ? (values[k] ?? 0) : 0))
  const straight = (pieces: number) => new Float64Array(pieces)

  it('is, of a bar alike in all pieces, its contrast over the uncertainty of that', () => {
    const ridge = scoreRidge(on(showing([-50, -50, -50, -50, -50])), [0], straight(5))
    expect(ridge).toMatchObject({ steer: [0], width: 4, contrast: -50 })
    // Ink and ground 4 px wide over 45 px: 50/5 · √(45/(1/4 + 1/4)).
    expect(ridge?.strength).toBeCloseTo(10 * Math.sqrt(90), 9)
  })

  it('is none where the other ink is looked for', () => {
    const dark = on(showing([-50, -50, -50, -50, -50]))
    expect(scoreRidge({ ...dark, ink: 'light' }, [0], straight(5))).toBeNull()
    expect(scoreRidge({ ...dark, ink: 'dark' }, [0], straight(5))).toEqual(scoreRidge(dark, [0], straight(5)))
  })

  it('goes by the contrast that more than half of the pieces reach', () => {
    expect(scoreRidge(on(showing([10, 50, 20, 40, 30])), [0], straight(5))?.contrast).toBe(30)
    expect(scoreRidge(on(showing([-10, -50, 99, 99, -40])), [0], straight(5))?.contrast).toBe(-10)
    expect(scoreRidge(on(showing([50, 50, 0, 0])), [0], straight(4))).toBeNull()
    expect(scoreRidge(on(showing([50, 50, -50, -50])), [0], straight(4))).toBeNull()
  })

  it('is the same of many pieces, whose ranks are told in another way', () => {
    const random = caseStream(11)
    for (const pieces of [24, 25, 40]) {
      const values = Array.from({ length: pieces }, () => Math.fround(20 + 30 * random.normal()))
      expect(reachedByHalf(values)).toBeGreaterThan(0)
      expect(scoreRidge(on(showing(values)), [0], straight(pieces))?.contrast).toBe(reachedByHalf(values))
    }
  })

  it('counts only the length of pieces in the picture that the way passes', () => {
    const grid = showing([50, 50, 50, 50, 50])
    grid.there[0] = false
    const ridge = scoreRidge(on(grid), [0], Float64Array.of(0, 0, 0, Number.NaN, 0))
    expect(ridge?.strength).toBeCloseTo(strengthOf(50, 4, (LENGTH * 3) / 5), 9)
    expect(scoreRidge(on(grid), [0], Float64Array.of(0, 0, Number.NaN, Number.NaN, 0))).toBeNull()
  })

  it('takes the width that stands out most', () => {
    // More contrast of a narrow bar, which is yet less sure than a wide one.
    const both = (narrow: number) => gridOf(5, (width) => (width === 4 ? 40 : width === 1.5 ? narrow : 0))
    const even = (40 * strengthOf(1, 4, 1)) / strengthOf(1, 1.5, 1)
    expect(scoreRidge(on(both(even - 1)), [0], straight(5))?.width).toBe(4)
    expect(scoreRidge(on(both(even + 1)), [0], straight(5))?.width).toBe(1.5)
  })

  it('reads between two columns in proportion', () => {
    const ridge = scoreRidge(on(showing([50, 50, 50])), [0], new Float64Array(3).fill(0.125))
    expect(ridge?.contrast).toBeCloseTo(0.75 * 50, 9)
  })
})

describe('parallel ways', () => {
  const MOST = 6
  const random = caseStream(12)
  /** A bar 2.5 px wide at 2 in noise, and one piece that is not in the picture. */
  const grid = gridOf(9, (width, _, t) =>
    Math.fround(12 * random.normal() + (width === 2.5 && t === 2 ? -60 : 0)),
  )
  grid.there[3] = false

  /** Of all widths the strongest at a place, tried one by one. */
  function tried(offset: number, sign = 0): { width: number; contrast: number; strength: number } | null {
    const column = (offset - LOW) * PER_PIXEL
    const all = grid.layers.map(({ width, bars }) => {
      const seen = grid.there.flatMap((there, k) => (there ? [bars[k * COLUMNS + column] ?? 0] : []))
      const contrast = reachedByHalf(seen)
      return { width, contrast, strength: strengthOf(contrast, width, (LENGTH * 8) / 9) }
    })
    const [best] = all.filter(({ contrast }) => sign * contrast >= 0).sort((a, b) => b.strength - a.strength)
    return best && best.strength > 0 ? best : null
  }

  it('are each what trying all widths finds', () => {
    const strengths = new Float64Array(2 * MOST + 1)
    const found = parallelRidges(on(grid), MOST, strengths)
    found.forEach((ridge, i) => {
      const best = tried(i - MOST)
      expect(ridge?.width).toBe(best?.width)
      expect(ridge?.contrast).toBe(best?.contrast)
      expect(strengths[i]).toBeCloseTo(best?.strength ?? 0, 6)
      if (ridge) expect(ridge.steer).toEqual([i - MOST])
    })
    const strongest = strengths.indexOf(Math.max(...strengths))
    expect(found[strongest]).toMatchObject({ steer: [2], width: 2.5 })
  })

  it('are of one ink alone where that is asked for, as strong as the best of that; what is told of all is not less', () => {
    const both = new Float64Array(2 * MOST + 1)
    const strengths = new Float64Array(2 * MOST + 1)
    parallelRidges(on(grid), MOST, both)
    for (const [ink, sign] of [
      ['dark', -1],
      ['light', 1],
    ] as const) {
      parallelRidges({ ...on(grid), ink }, MOST, strengths).forEach((ridge, i) => {
        const best = tried(i - MOST, sign)
        expect(ridge?.width).toBe(best?.width)
        expect(ridge?.contrast).toBe(best?.contrast)
      })
      strengths.forEach((strength, i) => {
        expect(strength).toBeCloseTo(both[i] ?? Number.NaN, 6)
      })
    }
  })

  it('are looked at no farther than is asked for bars of their width', () => {
    const strengths = new Float64Array(2 * MOST + 1)
    const found = parallelRidges(on(grid), MOST, strengths, (width) => (width === 2.5 ? 1 : -1))
    expect(found[2 + MOST]).toBeNull()
    expect(strengths[2 + MOST]).toBe(0)
    for (const ridge of found) if (ridge) expect(ridge.width).toBe(2.5)
  })
})

describe('climbing to a ridge', () => {
  /** Nine pieces of a slanting bar from −2 to 2, the less of it the farther aside, none from 4 px on. */
  const grid = gridOf(9, (width, k, t) =>
    width === 4 ? -80 * Math.max(0, 1 - Math.abs(t - (-2 + k / 2)) / 4) : 0,
  )
  const across = ([a = 0, b = 0]: readonly number[], out: Float64Array): void => {
    for (let k = 0; k < out.length; k++) out[k] = a + ((b - a) * k) / 8
  }
  const at = (steer: readonly number[]): Ridge => {
    const places = new Float64Array(9)
    across(steer, places)
    const ridge = scoreRidge(on(grid), steer, places)
    if (ridge === null) throw new Error('Nothing is seen along this way.')
    return ridge
  }

  it('ends at the best of all straight ways, tried by quarters of a pixel', () => {
    let best = at([0, 0])
    for (let a = -4; a <= 4; a += 0.25)
      for (let b = -4; b <= 4; b += 0.25) {
        const places = new Float64Array(9)
        across([a, b], places)
        const ridge = scoreRidge(on(grid), [a, b], places)
        if (ridge && ridge.strength > best.strength) best = ridge
      }
    expect(best.steer).toEqual([-2, 2])
    expect(best.strength).toBeCloseTo(strengthOf(80, 4, LENGTH), 6)
    const climbed = climbRidge(on(grid), at([0.75, -0.25]), across, [1, 0.25])
    expect(climbed.steer).toEqual([-2, 2])
    expect(climbed.strength).toBeCloseTo(best.strength, 9)
  })

  it('moves both ends together where one alone leads nowhere', () => {
    // The same slant, and a fainter one a pixel aside; nothing between them.
    const two = gridOf(9, (width, k, t) => {
      const away = t - (-2 + k / 2)
      return width === 4 && away === 0 ? 80 : width === 4 && away === 1 ? 50 : 0
    })
    const places = new Float64Array(9)
    across([-1, 3], places)
    const fainter = scoreRidge(on(two), [-1, 3], places)
    expect(fainter?.contrast).toBe(50)
    expect(fainter && climbRidge(on(two), fainter, across, [1, 1])).toMatchObject({
      steer: [-2, 2],
      contrast: 80,
    })
  })

  it('stays where nothing near is better', () => {
    const top = at([-2, 2])
    expect(climbRidge(on(grid), top, across, [1, 0.25])).toBe(top)
  })
})

describe('distinct ways', () => {
  const way = (place: number, strength: number): Ridge => ({
    steer: [place],
    width: 4,
    contrast: -50,
    strength,
  })
  const apart = (a: Ridge, b: Ridge) => Math.abs((a.steer[0] ?? 0) - (b.steer[0] ?? 0)) > 1.5

  it('are the strongest, each apart from all stronger ones, and no more than asked for', () => {
    const all = [way(4, 7), way(0, 9), way(1, 8), way(-3, 5), way(2, 6)]
    expect(distinct(all, 9, apart).map((r) => r.steer[0])).toEqual([0, 4, 2, -3])
    expect(distinct(all, 2, apart).map((r) => r.steer[0])).toEqual([0, 4])
  })
})
