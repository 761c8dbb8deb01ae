import { describe, expect, it } from 'vitest'
import { nearFigure, type Style } from '../../../../src/core/ledger/units/display-units.ts'

const style = (set: Partial<Style>): Style => ({
  kind: 'length',
  unit: 'in',
  figuresIn: set.unit ?? 'in',
  figuresAs: 'fractions',
  finest: null,
  feetFrom: null,
  ...set,
})
const IN = 25.4

describe('the figure near a measured value', () => {
  it.each([
    [11.493, 0.02, undefined, '11 1/2"'],
    // Sixteenths closer than U are not told apart: the coarser fraction.
    [11.493, 0.075, undefined, '11 1/2"'],
    [11.45, 0.075, undefined, '11 1/2"'],
    [6.37, 0.12, undefined, '6 3/8"'],
    [6.1, 0.3, undefined, '6"'],
    // Two eighths lie within.
    [16.951, 0.085, undefined, undefined],
    [1.917, 0.055, undefined, undefined],
    [6.2, 1.2, undefined, undefined],
    [11.453, 0.01, undefined, undefined],
    [11.453, 0.01, 64, '11 29/64"'],
  ])('of %d in ± %d, finest %s, is %s', (value, U, finest, near) => {
    expect(nearFigure(value * IN, U * IN, style({ finest: finest ?? null }))).toBe(near)
  })

  it.each([
    [202.88, 0.84, '203 mm'],
    [202.6, 0.3, undefined],
    // Three whole millimetres lie within.
    [76.3, 1.8, undefined],
  ])('of %d mm ± %d is %s', (value, U, near) => {
    expect(nearFigure(value, U, style({ unit: 'mm' }))).toBe(near)
  })

  it('is one of the job, whatever unit it is looked at in', () => {
    const looked = style({ unit: 'mm', figuresIn: 'in' })
    expect(nearFigure(291.5, 1.7, looked)).toBe('11 1/2"')
    expect(nearFigure(291.5, 1.7, style({ unit: 'in', figuresIn: 'mm' }))).toBeUndefined()
  })

  it('is a whole degree only where no other lies as near', () => {
    const degree = Math.PI / 180
    expect(nearFigure(61.43 * degree, 0.52 * degree, style({ kind: 'angle' }))).toBe('61°')
    expect(nearFigure(34.4 * degree, 1.3 * degree, style({ kind: 'angle' }))).toBeUndefined()
  })
})
