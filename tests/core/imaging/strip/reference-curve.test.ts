import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import {
  type ReferenceCurve,
  roundCurve,
  straightCurve,
} from '../../../../src/core/imaging/strip/reference-curve.ts'

const CURVES: [name: string, curve: ReferenceCurve][] = [
  ['straight', straightCurve(pixel(10, 20), pixel(50, 45))],
  ['an arc, clockwise', roundCurve(pixel(30, 30), 20, 0.5, 2)],
  ['an arc, the other way', roundCurve(pixel(30, 30), 20, 0.5, -2)],
  ['a nearly round ellipse', roundCurve(pixel(30, 30), 40, 0.1, 6, [0.3, -0.2])],
]

const located = (curve: ReferenceCurve, [x, y]: readonly [number, number]) => {
  const out = { along: Number.NaN, across: Number.NaN }
  curve.locate(x, y, out)
  return out
}

describe.each(CURVES)('a reference curve, %s', (_, curve) => {
  const along = 0.3 * curve.length

  it('finds the place again that it tells', () => {
    const { along: s, across } = located(curve, curve.place(along, 1.7))
    expect(s).toBeCloseTo(along, 9)
    expect(across).toBeCloseTo(1.7, 9)
  })

  it('moves across itself with its parameters as its basis says, and turns as that changes', () => {
    const h = 1e-5
    for (let j = 0; j < curve.parameters; j++) {
      const by = new Float64Array(curve.parameters)
      by[j] = h
      const moved = curve.moved(by)
      // The place stays, so it is then farther to the other side.
      const across = (s: number) => -located(moved, curve.place(s, 0)).across / h
      // Of an ellipse to first order of how far it is from round.
      expect(curve.basisAt(along).values[j]).toBeCloseTo(across(along), curve.parameters > 3 ? 1 : 3)
      const slope =
        (curve.basisAt(along + 0.01).values[j] ?? 0) - (curve.basisAt(along - 0.01).values[j] ?? 0)
      expect(curve.basisAt(along).slopes[j]).toBeCloseTo(slope / 0.02, 6)
    }
  })

  it('is shifted across by as much as is asked', () => {
    const shifted = curve.moved(curve.shifted(0.4))
    expect(located(shifted, curve.place(along, 0.4)).across).toBeCloseTo(0, 9)
  })
})
