import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { Mark } from '../../../src/core/job/model/types.ts'
import {
  byHandInstead,
  canEnd,
  ended,
  isComplete,
  isLooking,
  lastPixel,
  noPicks,
  nudged,
  type Picks,
  takes,
  wanted,
  withMark,
  withoutLast,
  withPick,
  withStroke,
} from '../../../src/renderer/picking/picks.ts'
import type { Tool } from '../../../src/renderer/picking/tool.ts'
import { reason } from '../../../src/renderer/words/window-words.ts'

const DISTANCE: Tool = { kind: 'measure', view: 'V1', measure: 'distance' }
const ANGLE: Tool = { kind: 'measure', view: 'V1', measure: 'angle' }
const DIAMETER: Tool = { kind: 'reference', view: 'V1', reference: 'diameter' }
const AREA: Tool = { kind: 'measure', view: 'V1', measure: 'area' }

const picked = (tool: Tool, ...pixels: Pixel[]): Picks =>
  pixels.reduce((picks, pixel) => withPick(picks, pixel), noPicks(tool))

const point = (id: string): Mark => ({
  id,
  sheet: 'S1',
  how: 'hand',
  sigma: 1,
  kind: 'point',
  pixel: pixel(5, 5),
})
const line = (id: string): Mark => ({
  id,
  sheet: 'S1',
  how: 'hand',
  sigma: 1,
  kind: 'line',
  pixels: [pixel(0, 0), pixel(9, 0)],
})

describe('picking the marks of a measure', () => {
  it('asks for two points for a distance, and then for nothing more', () => {
    const first = picked(DISTANCE, pixel(1, 2))
    expect(wanted(noPicks(DISTANCE))).toBe('point')
    expect(wanted(first)).toBe('point')
    expect(isComplete(first)).toBe(false)
    const both = withPick(first, pixel(3, 4))
    expect(isComplete(both)).toBe(true)
    expect(withPick(both, pixel(9, 9))).toBe(both)
  })

  it('puts two picks into each line of an angle', () => {
    const picks = picked(ANGLE, pixel(0, 0), pixel(9, 0), pixel(0, 0), pixel(5, 5))
    expect(picks.features.map((feature) => 'pixels' in feature && feature.pixels.length)).toEqual([2, 2])
    expect(isComplete(picks)).toBe(true)
  })

  it('settles a circle with three picks', () => {
    expect(isComplete(picked(DIAMETER, pixel(0, 1), pixel(1, 0)))).toBe(false)
    expect(isComplete(picked(DIAMETER, pixel(0, 1), pixel(1, 0), pixel(0, -1)))).toBe(true)
  })

  it('goes on with a path until it is ended, which takes three points for an area', () => {
    const two = picked(AREA, pixel(0, 0), pixel(4, 0))
    expect(canEnd(two)).toBe(false)
    expect(ended(two)).toBe(two)
    const three = withPick(two, pixel(4, 4))
    expect(isComplete(three)).toBe(false)
    expect(isComplete(ended(three))).toBe(true)
  })

  it('uses an old mark of the kind that is wanted again, but not the same one twice', () => {
    const first = withMark(noPicks(DISTANCE), point('M1'))
    expect(first.features).toEqual([{ need: 'point', mark: 'M1', done: true }])
    expect(takes(first, point('M1'))).toBe(false)
    expect(takes(first, line('M2'))).toBe(false)
    expect(isComplete(withMark(first, point('M3')))).toBe(true)
  })

  it('does not take an old line while a line is half picked', () => {
    expect(takes(picked(ANGLE, pixel(0, 0)), line('M2'))).toBe(false)
    expect(takes(noPicks(ANGLE), line('M2'))).toBe(true)
  })

  it('takes no old mark for the corner of an outline', () => {
    expect(takes(noPicks({ kind: 'outline' }), point('M1'))).toBe(false)
  })

  it('takes nothing while only looking', () => {
    const looking = noPicks({ kind: 'look' })
    expect(wanted(looking)).toBeNull()
    expect(isComplete(looking)).toBe(false)
    expect(withPick(looking, pixel(1, 1))).toBe(looking)
  })
})

describe('taking picks back', () => {
  it('abandons one pick at a time, also out of a mark that was finished', () => {
    let picks = picked(ANGLE, pixel(0, 0), pixel(9, 0), pixel(0, 0))
    picks = withoutLast(picks)
    expect(wanted(picks)).toBe('line')
    expect(picks.features).toHaveLength(1)
    picks = withoutLast(picks)
    expect(lastPixel(picks)).toEqual([0, 0])
    picks = withPick(picks, pixel(8, 1))
    expect(picks.features).toEqual([
      {
        need: 'line',
        pixels: [
          [0, 0],
          [8, 1],
        ],
        sigmas: [1, 1],
        done: true,
      },
    ])
    expect(withoutLast(withoutLast(picks)).features).toEqual([])
  })

  it('opens an ended path again', () => {
    const path = ended(picked(AREA, pixel(0, 0), pixel(4, 0), pixel(4, 4)))
    const opened = withoutLast(path)
    expect(isComplete(opened)).toBe(false)
    expect(lastPixel(opened)).toEqual([4, 0])
  })
})

describe('nudging', () => {
  it('moves the newest pick alone', () => {
    const picks = nudged(picked(DISTANCE, pixel(10, 10), pixel(20, 20)), 0.1, -1)
    expect(lastPixel(picks)).toEqual([20.1, 19])
    expect(lastPixel(withoutLast(picks))).toEqual([10, 10])
  })

  it('leaves an old mark where it is', () => {
    const picks = withMark(noPicks(DISTANCE), point('M1'))
    expect(nudged(picks, 1, 1)).toBe(picks)
    expect(lastPixel(picks)).toBeNull()
  })
})

describe('how sure a pick is', () => {
  const sigmas = (picks: Picks) => picks.features.map((feature) => 'sigmas' in feature && feature.sigmas)

  it('is kept with each pick, and goes when the pick goes', () => {
    const picks = withPick(withPick(noPicks(ANGLE), pixel(0, 0), 7.5), pixel(9, 0), 1)
    expect(sigmas(picks)).toEqual([[7.5, 1]])
    expect(sigmas(withoutLast(picks))).toEqual([[7.5]])
  })

  it('is that of a careful hand once a pick was moved by keys, which is done through the lens', () => {
    expect(sigmas(nudged(withPick(noPicks(DISTANCE), pixel(0, 0), 7.5), 0.1, 0))).toEqual([[1]])
  })
})

describe('looking for strokes', () => {
  it('goes on until each mark has its answer', () => {
    const picks = picked(DISTANCE, pixel(10, 10), pixel(20, 20))
    expect(isLooking(picks)).toBe(false)
    const [first] = picks.features
    if (first === undefined || !('pixels' in first)) throw new Error('Nothing was picked.')
    const looking = withStroke(picks, first, { state: 'looking' })
    expect(isLooking(looking.picks)).toBe(true)
    const none = withStroke(looking.picks, looking.now, { state: 'none', because: reason('search.stopped') })
    expect(isLooking(none.picks)).toBe(false)
  })

  it('need not be waited for: what was picked is taken by hand, and a later answer changes nothing', () => {
    const picks = picked(DISTANCE, pixel(10, 10), pixel(20, 20))
    const [first] = picks.features
    if (first === undefined || !('pixels' in first)) throw new Error('Nothing was picked.')
    const looking = withStroke(picks, first, { state: 'looking' })
    const byHand = byHandInstead(looking.picks)
    expect(isLooking(byHand)).toBe(false)
    expect(byHand.features[0]).toEqual({ ...first, byHand: true })
    const late = withStroke(byHand, looking.now, { state: 'none', because: reason('search.stopped') })
    expect(late.picks).toBe(byHand)
  })
})
