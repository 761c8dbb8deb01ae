import { expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { UnnamedMark } from '../../../src/core/job/from-picks/picked-mark.ts'
import { acrossStroke, markUncertainty } from '../../../src/renderer/strokes/uncertainty-words.ts'

const rough = [pixel(0, 0)]
/** A level stroke: 1.5 px along it, 0.05 px across. */
const onPoint = (as: 'point' | 'crossing'): UnnamedMark => ({
  how: 'stroke',
  sigma: 1.5,
  kind: 'point',
  pixel: pixel(0, 0),
  covariance: [2.25, 0, 0.0025],
  stroke: { as, reading: 'centre', rough },
})
const line: UnnamedMark = {
  how: 'stroke',
  sigma: 0.12,
  kind: 'line',
  pixels: [pixel(0, 0), pixel(10, 0), pixel(20, 0), pixel(30, 0)],
  stroke: { as: 'line', reading: 'centre', rough },
}

it('How sure a mark is, is told across its stroke and along it', () => {
  expect(markUncertainty(onPoint('point'))).toBe('σ 0.050 px across the stroke, 1.5 px along it')
  expect(markUncertainty(onPoint('crossing'))).toBe('σ 0.050 px one way and 1.5 px the other')
  expect(markUncertainty(line)).toBe('σ 0.060 px across it, from 4 profiles of 0.12 px each')
  expect(markUncertainty({ how: 'hand', sigma: 1, kind: 'point', pixel: pixel(0, 0) })).toBe(
    'σ 1.0 px in x and in y',
  )
})

it('Across its stroke a line is as sure as all of its profiles together', () => {
  expect(acrossStroke(line)).toBeCloseTo(0.06, 12)
  expect(acrossStroke(onPoint('point'))).toBeCloseTo(0.05, 12)
})
