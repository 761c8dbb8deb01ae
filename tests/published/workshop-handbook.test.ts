import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../src/core/formula/formula.ts'
import { AREA, LENGTH, NUMBER, type Units } from '../../src/core/formula/formula-units.ts'
import { parseLength } from '../../src/core/quantity/parse/parse-length.ts'
import { standardUncertainty } from '../../src/core/uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../src/core/uncertainty/first-order.ts'
import { exact, measured, type Uncertain } from '../../src/core/uncertainty/uncertain.ts'

const evaluate = (text: string, dimensions: Record<string, Uncertain> = {}): Uncertain =>
  parseFormula(text).value((name) => dimensions[name] as Uncertain, FIRST_ORDER)
const unitsOf = (text: string, dimensions: Record<string, Units> = {}): Units =>
  parseFormula(text).units((name) => dimensions[name] as Units)

describe('the inch of the international agreement of 1959', () => {
  it('is 25.4 mm exactly, as a figure and in a formula', () => {
    expect(parseLength('1"', { unit: 'in' }).mm.equals('25.4')).toBe(true)
    expect(evaluate('1 in').value).toBe(25.4)
    expect(evaluate('1 inch / (1 mm)').value).toBe(25.4)
  })

  it('makes the foot 304.8 mm', () => {
    expect(parseLength(`1'`, { unit: 'in' }).mm.equals('304.8')).toBe(true)
    expect(evaluate('1 ft').value).toBe(304.8)
    expect(evaluate('12 in').value).toBeCloseTo(304.8, 12)
  })
})

describe('chords of a divided circle, D sin(180°/n), as in any engineers’ handbook', () => {
  const CHORDS: [n: number, chord: string][] = [
    [5, '0.587785'],
    [6, '0.500000'],
    [8, '0.382683'],
  ]
  for (const [n, chord] of CHORDS) {
    it(`of ${n} holes: ${chord} of the diameter`, () => {
      const text = 'bolt_circle * sin(180 deg / holes)'
      expect(unitsOf(text, { bolt_circle: LENGTH, holes: NUMBER })).toEqual(LENGTH)
      const of = (diameter: number) => evaluate(text, { bolt_circle: exact(diameter), holes: exact(n) }).value
      expect(of(1).toFixed(6)).toBe(chord)
      expect(of(254)).toBeCloseTo(254 * of(1), 11)
    })
  }

  it('carries the uncertainty of the diameter in proportion', () => {
    const chord = evaluate('bolt_circle * sin(180 deg / 5)', { bolt_circle: measured(200, 0.5, 'tape') })
    expect(standardUncertainty(chord)).toBeCloseTo(0.5 * 0.5877852523, 9)
  })
})

describe('radius from chord c and rise h, c²/(8h) + h/2, as in any engineers’ handbook', () => {
  const text = 'c^2 / (8 * h) + h / 2'

  it('is a length', () => {
    expect(unitsOf(text, { c: LENGTH, h: LENGTH })).toEqual(LENGTH)
    expect(unitsOf('c^2', { c: LENGTH })).toEqual(AREA)
  })

  it('gives back the radius of a true arc', () => {
    for (const [radius, half] of [
      [100, 0.3],
      [1250, 0.02],
      [40, Math.PI / 2],
    ] as const) {
      const c = exact(2 * radius * Math.sin(half))
      const h = exact(radius * (1 - Math.cos(half)))
      expect(evaluate(text, { c, h }).value / radius).toBeCloseTo(1, 11)
    }
  })

  it('is 5 for a chord of 8 and a rise of 2, the triangle 3, 4, 5', () => {
    expect(evaluate(text, { c: exact(8), h: exact(2) }).value).toBe(5)
  })
})
