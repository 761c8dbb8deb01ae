import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Job, Mark } from '../../../src/core/job/model/types.ts'
import {
  byHandEdit,
  dimensionEdit,
  isMeasure,
  refoundEdit,
  repeatEdit,
} from '../../../src/renderer/desk/pick-edits.ts'
import type { Fitted } from '../../../src/renderer/picking/fitted.ts'
import {
  fittedOf,
  lastPixel,
  noPicks,
  nudged,
  type Picks,
  readyForStroke,
  withoutLast,
  withPick,
  withStroke,
} from '../../../src/renderer/picking/picks.ts'
import type { Tool } from '../../../src/renderer/picking/tool.ts'

const rough: Pixel[] = [pixel(10, 21), pixel(90, 19)]
const onLine: Fitted = {
  stroke: { as: 'line', reading: 'centre', rough, width: 4.1, leftOut: [pixel(50, 22)] },
  pixels: [pixel(12, 20.01), pixel(50, 20.02), pixel(88, 19.99)],
  sigma: 0.06,
  across: 0.035,
}
const onPoint: Fitted = {
  stroke: { as: 'crossing', reading: 'centre', rough: [pixel(31, 41)], width: 4 },
  pixels: [pixel(30.2, 40.4)],
  sigma: 0.05,
  across: 0.04,
  covariance: [0.0025, 0, 0.0016],
}

const picked = (tool: Tool, pixels: readonly Pixel[], byHand = false): Picks =>
  pixels.reduce((picks, pixel) => withPick(picks, pixel, 1, byHand), noPicks(tool))

/** With what was found under the newest picks. */
function found(picks: Picks, fitted: Fitted): Picks {
  const ready = readyForStroke(picks)
  if (ready === null) throw new Error('No stroke is looked for there.')
  return withStroke(picks, ready, { state: 'found', fitted }).picks
}

function aJob(): Job {
  const job = newJob('Winch', 'mm')
  const scan = { file: 'winch.png', sha256: '0'.repeat(64), page: 1, width: 2000, height: 1500 }
  job.sheets.push({ id: 'S1', title: 'Winch', record: {}, scan })
  job.views.push({ id: 'V1', sheet: 'S1', name: 'Plan', mapping: 'uniform', references: [] })
  return job
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
    expect(withStroke(moved, ready, { state: 'found', fitted: onPoint }).picks).toBe(moved)
  })

  it('are by hand again once they are moved by keys or taken back', () => {
    const line = found(picked(spacing, rough), onLine)
    for (const after of [nudged(line, 0.1, 0), withoutLast(line)]) {
      expect(after.features.map(fittedOf)).toEqual([null])
    }
  })
})

describe('marks on strokes', () => {
  it('are kept with what they were found from', () => {
    const picks = found(
      withPick(found(picked(distance, [pixel(31, 41)]), onPoint), pixel(500, 500), 1, false),
      {
        ...onPoint,
        pixels: [pixel(500.3, 499.8)],
      },
    )
    if (!isMeasure(picks)) throw new Error('The tool measures.')
    const { job } = applyEdit(aJob(), dimensionEdit(aJob(), picks, { name: 'a', label: 'A', count: 1 }))
    expect(job.marks[0]).toEqual({
      id: 'M1',
      sheet: 'S1',
      how: 'stroke',
      kind: 'point',
      pixel: [30.2, 40.4],
      sigma: 0.05,
      stroke: onPoint.stroke,
      covariance: onPoint.covariance,
    })
  })

  const line: Mark = {
    id: 'M1',
    sheet: 'S1',
    how: 'stroke',
    kind: 'line',
    sigma: 0.06,
    stroke: onLine.stroke,
    pixels: onLine.pixels,
    repeats: [onLine.pixels],
    repeatedBy: [{}],
  }
  const withLine = (): Job => ({ ...aJob(), marks: [line] })

  it('are put back to where the hand pointed, as good as a hand, and that is taken back as one', () => {
    const edit = byHandEdit(line)
    if (edit === null) throw new Error('The mark knows where it was pointed at.')
    const { job, inverse } = applyEdit(withLine(), edit)
    expect(job.marks[0]).toEqual({
      id: 'M1',
      sheet: 'S1',
      how: 'hand',
      kind: 'line',
      sigma: 1,
      pixels: rough,
    })
    expect(applyEdit(job, inverse).job).toEqual(withLine())
  })

  it('are found anew without what was picked again before', () => {
    const { job } = applyEdit(withLine(), refoundEdit(line, { ...onLine, sigma: 0.05 }))
    expect(job.marks[0]).toMatchObject({ how: 'stroke', sigma: 0.05, pixels: onLine.pixels })
    expect(job.marks[0]).not.toHaveProperty('repeats')
  })

  it('are picked again on the stroke only, and whole', () => {
    const tool: Tool = { kind: 'repeat', mark: 'M1', need: 'line' }
    expect(repeatEdit(line, picked(tool, rough.slice(0, 1)))).toBeNull()
    expect(repeatEdit(line, picked(tool, rough))).toBeNull()
    expect(repeatEdit(line, found(picked(tool, rough), onLine))).toEqual({
      do: 'repeat-pick',
      mark: 'M1',
      pixels: onLine.pixels,
    })
    const byHand: Mark = { id: 'M1', sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(1, 1) }
    const once: Tool = { kind: 'repeat', mark: 'M1', need: 'point' }
    expect(repeatEdit(byHand, picked(once, [pixel(2, 3)], true))).toEqual({
      do: 'repeat-pick',
      mark: 'M1',
      pixel: [2, 3],
    })
  })
})
