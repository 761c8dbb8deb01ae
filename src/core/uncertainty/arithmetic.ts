/** Arithmetic of uncertain numbers by first-order propagation (JCGM 100:2008, 5.1 and 5.2). */
import { propagate, type Uncertain } from './uncertain.ts'

export const add = (a: Uncertain, b: Uncertain): Uncertain => propagate(a.value + b.value, [a, b], [1, 1])

export const subtract = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value - b.value, [a, b], [1, -1])

export const multiply = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value * b.value, [a, b], [b.value, a.value])

export const divide = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value / b.value, [a, b], [1 / b.value, -a.value / (b.value * b.value)])

/** factor · a, the factor exact. */
export const scale = (a: Uncertain, factor: number): Uncertain => propagate(factor * a.value, [a], [factor])

/** a to the power of b, either uncertain; the base must be positive where the exponent is uncertain. */
export function power(a: Uncertain, b: Uncertain): Uncertain {
  const value = a.value ** b.value
  const byBase = b.value === 0 ? 0 : b.value * a.value ** (b.value - 1)
  const byExponent = b.sources.length === 0 ? 0 : value * Math.log(a.value)
  return propagate(value, [a, b], [byBase, byExponent])
}

/** f(x) with its derivative f'(x) given as numbers at x. */
export const through = (x: Uncertain, value: number, derivative: number): Uncertain =>
  propagate(value, [x], [derivative])

/** Angle of the vector (x, y) in radians, −π..π. */
export function atan2(y: Uncertain, x: Uncertain): Uncertain {
  const r2 = x.value * x.value + y.value * y.value
  return propagate(Math.atan2(y.value, x.value), [y, x], [x.value / r2, -y.value / r2])
}
