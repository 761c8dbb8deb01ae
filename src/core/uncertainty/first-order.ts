/** Arithmetic of uncertain numbers by first-order propagation (JCGM 100:2008, 5.1 and 5.2). */
import type { Arithmetic } from './arithmetic.ts'
import { exact, propagate, type Uncertain } from './uncertain.ts'

const add = (a: Uncertain, b: Uncertain): Uncertain => propagate(a.value + b.value, [a, b], [1, 1])

const subtract = (a: Uncertain, b: Uncertain): Uncertain => propagate(a.value - b.value, [a, b], [1, -1])

const multiply = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value * b.value, [a, b], [b.value, a.value])

const divide = (a: Uncertain, b: Uncertain): Uncertain =>
  propagate(a.value / b.value, [a, b], [1 / b.value, -a.value / (b.value * b.value)])

function power(a: Uncertain, b: Uncertain): Uncertain {
  const value = a.value ** b.value
  const byBase = b.value === 0 ? 0 : b.value * a.value ** (b.value - 1)
  const byExponent = b.sources.length === 0 ? 0 : value * Math.log(a.value)
  return propagate(value, [a, b], [byBase, byExponent])
}

export const FIRST_ORDER: Arithmetic<Uncertain> = {
  exact,
  of: (x) => x,
  toNumber: (x) => x.value,
  add,
  subtract,
  multiply,
  divide,
  power,
  scale: (a, factor) => propagate(factor * a.value, [a], [factor]),
  through: (x, f, derivative) => propagate(f(x.value), [x], [derivative(x.value)]),
  combine(args, f, gradient) {
    const values = args.map((x) => x.value)
    return propagate(f(values), args, gradient(values))
  },
}
