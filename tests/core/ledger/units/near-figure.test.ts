import { describe, expect, it } from 'vitest'
import { nearFigures, type Style } from '../../../../src/core/ledger/units/display-units.ts'

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

/** The nearest, and the ends of those that it may be. */
const near = (value: number, U: number, set: Style): string | undefined => {
  const figures = nearFigures(value, U, set)
  return figures && [figures.near, ...(figures.range ?? [])].join(' | ')
}

describe('the figures near a measured value', () => {
  it.each([
    [11.493, 0.02, undefined, '11 1/2"'],
    [11.493, 0.075, undefined, '11 1/2" | 11 7/16" | 11 9/16"'],
    [16.951, 0.085, undefined, '16 15/16" | 16 7/8" | 17"'],
    [1.917, 0.055, undefined, '1 15/16" | 1 7/8" | 1 15/16"'],
    [6.2, 0.3, undefined, undefined],
    [11.453, 0.01, undefined, undefined],
    [11.453, 0.01, 64, '11 29/64"'],
    [0.02, 0.03, undefined, undefined],
  ])('of %d in ± %d, finest %s, are %s', (value, U, finest, said) => {
    expect(near(value * IN, U * IN, style({ finest: finest ?? null }))).toBe(said)
  })

  it.each([
    [202.88, 0.84, '203 mm'],
    [202.6, 0.3, undefined],
    [76.3, 1.8, '76 mm | 75 mm | 78 mm'],
    [795.3, 7.1, undefined],
  ])('of %d mm ± %d are %s', (value, U, said) => {
    expect(near(value, U, style({ unit: 'mm' }))).toBe(said)
  })

  it('are those of the job, whatever unit it is looked at in', () => {
    expect(near(291.5, 1.7, style({ unit: 'mm', figuresIn: 'in' }))).toBe('11 1/2" | 11 7/16" | 11 1/2"')
    expect(near(291.5, 1.7, style({ unit: 'in', figuresIn: 'mm' }))).toBe('292 mm | 290 mm | 293 mm')
  })

  it('are whole degrees', () => {
    const degree = Math.PI / 180
    expect(near(61.43 * degree, 0.52 * degree, style({ kind: 'angle' }))).toBe('61°')
  })

  it('are only those that other evidence lets be', () => {
    const only = nearFigures(11.493 * IN, 0.075 * IN, style({}), (size) => size < 11.5 * IN + 0.1)
    expect(only).toEqual({ near: '11 1/2"', range: ['11 7/16"', '11 1/2"'] })
  })
})
