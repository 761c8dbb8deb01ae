import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { UnnamedMark } from '../../../src/core/job/from-picks/picked-mark.ts'
import { isMeasure, pickedAgain, pickedMeasure } from '../../../src/renderer/picking/picked-marks.ts'
import {
  foundMark,
  lastPixel,
  noPicks,
  nudged,
  type Picks,
  readyForStroke,
  withMark,
  withoutLast,
  withPick,
  withStroke,
} from '../../../src/renderer/picking/picks.ts'
import type { Tool } from '../../../src/renderer/picking/tool.ts'

const rough: Pixel[] = [pixel(10, 21), pixel(90, 19)]
const onLine: UnnamedMark = {
  how: 'stroke',
  kind: 'line',
  sigma: 0.06,
  stroke: { as: 'line', reading: 'centre', rough, width: 4.1, leftOut: [pixel(50, 22)] },
  pixels: [pixel(12, 20.01), pixel(50, 20.02), pixel(88, 19.99)],
}
const onPoint: UnnamedMark & { kind: 'point' } = {
  how: 'stroke',
  kind: 'point',
  sigma: 0.05,
  stroke: { as: 'crossing', reading: 'centre', rough: [pixel(31, 41)], width: 4 },
  pixel: pixel(30.2, 40.4),
  covariance: [0.0025, 0, 0.0016],
}

const picked = (tool: Tool, pixels: readonly Pixel[], byHand = false): Picks =>
  pixels.reduce((picks, pixel) => withPick(picks, pixel, 1, byHand), noPicks(tool))

/** With what was found under the newest picks. */
function found(picks: Picks, mark: UnnamedMark): Picks {
  const ready = readyForStroke(picks)
  if (ready === null) throw new Error('No stroke is looked for there.')
  return withStroke(picks, ready, { state: 'found', mark }).picks
}

const distance: Tool = { kind: 'measure', view: 'V1', measure: 'distance' }
const spacing: Tool = { kind: 'measure', view: 'V1', measure: 'spacing' }

describe('picks on strokes', () => {
  it('move a point onto the stroke, and leave the picks of a line where the hand made them', () => {
    const point = found(picked(distance, [pixel(31, 41)]), onPoint)
    expect(lastPixel(point)).toEqual([30.2, 40.4])
    const line = found(picked(spacing, rough), onLine)
    expect(lastPixel(line)).toEqual([90, 19])
  })

  it('are looked for once, when a mark is complete, and not where any of it is by hand', () => {
    expect(readyForStroke(picked(spacing, rough.slice(0, 1)))).toBeNull()
    expect(readyForStroke(found(picked(spacing, rough), onLine))).toBeNull()
    expect(readyForStroke(picked(spacing, rough, true))).toBeNull()
    expect(readyForStroke(picked({ kind: 'outline' }, rough))).toBeNull()
    expect(readyForStroke(picked({ kind: 'measure', view: 'V1', measure: 'run' }, rough))).toBeNull()
  })

  it('come late for picks that were changed meanwhile, and change nothing then', () => {
    const picks = picked(distance, [pixel(31, 41)])
    const ready = readyForStroke(picks)
    if (ready === null) throw new Error('No stroke is looked for there.')
    const moved = nudged(picks, 1, 0)
    expect(withStroke(moved, ready, { state: 'found', mark: onPoint }).picks).toBe(moved)
  })

  it('are by hand again once they are moved by keys or taken back', () => {
    const line = found(picked(spacing, rough), onLine)
    for (const after of [nudged(line, 0.1, 0), withoutLast(line)]) {
      expect(after.features.map(foundMark)).toEqual([null])
    }
  })
})

describe('what was picked, as marks,', () => {
  it('is where the stroke was found, else where the hand was, and old marks by their ids', () => {
    const picks = found(picked(distance, [pixel(31, 41)]), onPoint)
    const old = { id: 'M7', sheet: 'S1', ...onPoint }
    const second = withMark(picks, old)
    if (!isMeasure(second)) throw new Error('The tool measures.')
    expect(pickedMeasure(second, { marks: [] })).toEqual({
      view: 'V1',
      measure: 'distance',
      marks: [onPoint, 'M7'],
    })
    const byHand = withPick(picks, pixel(500.12345, 500), 2.04, true)
    if (!isMeasure(byHand)) throw new Error('The tool measures.')
    expect(pickedMeasure(byHand, { marks: [] }).marks).toEqual([
      onPoint,
      { how: 'hand', kind: 'point', sigma: 2, pixel: [500.123, 500] },
    ])
  })

  it('is once more what was picked before only when it is whole', () => {
    const tool: Tool = { kind: 'repeat', mark: 'M1', called: 'mark M1', need: 'line' }
    expect(pickedAgain(picked(tool, rough.slice(0, 1)))).toBeNull()
    expect(pickedAgain(picked(tool, rough))).toMatchObject({ how: 'hand', pixels: rough })
    expect(pickedAgain(found(picked(tool, rough), onLine))).toEqual(onLine)
    expect(pickedAgain(picked(distance, rough))).toBeNull()
  })
})
