import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../../src/core/formula/formula.ts'
import { covariance } from '../../../src/core/uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { exact, measured } from '../../../src/core/uncertainty/uncertain.ts'

const AT = { a: 3.7, b: 1.9 }
type Name = keyof typeof AT

const FORMULAS = [
  'a + b',
  'a - 2 * b',
  'a * b',
  'a / b',
  'a ^ 3',
  'a ^ b',
  'b ^ -1.5',
  'sqrt(a * b)',
  'cbrt(a)',
  'abs(b - a)',
  'min(a, b) + 2 * max(a, b)',
  'hypot(a, b, a)',
  'sin(a)',
  'cos(b)',
  'tan(b)',
  'asin(b / a)',
  'acos(b / a)',
  'atan(a * b)',
  'atan2(a, b)',
  'atan2(-a, b - a)',
  'a^2 / (8 * b) + b / 2',
  'pi * (a - b) * sqrt(a^2 + b^2)',
  '-(a - b)^2',
]

describe('a formula’s derivative by each dimension is that of finite differences', () => {
  for (const text of FORMULAS) {
    it(text, () => {
      const formula = parseFormula(text)
      const at = (shift: Partial<Record<Name, number>>): number =>
        formula.value((name) => exact(AT[name as Name] + (shift[name as Name] ?? 0)), FIRST_ORDER).value
      const inputs = { a: measured(AT.a, 1, 'a'), b: measured(AT.b, 1, 'b') }
      const y = formula.value((name) => inputs[name as Name], FIRST_ORDER)
      for (const name of ['a', 'b'] as const) {
        const h = 1e-5
        const numeric = (at({ [name]: h }) - at({ [name]: -h })) / (2 * h)
        expect(Math.abs(covariance(y, inputs[name]) - numeric)).toBeLessThan(1e-8 * (1 + Math.abs(numeric)))
      }
    })
  }
})
