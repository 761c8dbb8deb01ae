import type { Arithmetic } from '../uncertainty/arithmetic.ts'
import { reason } from '../words/core-words.ts'
import { FormulaError } from './formula-error.ts'
import { ANGLE, NUMBER, sameUnits, type Units, unitsInWords } from './formula-units.ts'

/** A function that formulas may use: what units it takes and gives, and its value in any arithmetic. */
export interface FormulaFunction {
  arguments: { least: number; most: number }
  /** @throws FormulaError where the units make no sense */
  units(name: string, units: readonly Units[]): Units
  value<N>(args: readonly N[], arithmetic: Arithmetic<N>): N
}

const one = { least: 1, most: 1 }
const two = { least: 2, most: 2 }
const several = { least: 1, most: 20 }

const first = <T>(args: readonly T[]): T => args[0] as T

function anAngle(name: string, [given]: readonly Units[]): void {
  if (given === undefined || !sameUnits(given, ANGLE)) {
    throw new FormulaError(reason('formula.needs-an-angle', { name, given: unitsInWords(given ?? NUMBER) }))
  }
}

function aNumber(name: string, [given]: readonly Units[]): void {
  if (given === undefined || !sameUnits(given, NUMBER)) {
    throw new FormulaError(reason('formula.needs-a-number', { name, given: unitsInWords(given ?? NUMBER) }))
  }
}

function alike(name: string, units: readonly Units[]): Units {
  const [head = NUMBER, ...rest] = units
  const odd = rest.find((u) => !sameUnits(u, head))
  if (odd !== undefined) {
    throw new FormulaError(
      reason('formula.values-mix-units', { name, first: unitsInWords(head), other: unitsInWords(odd) }),
    )
  }
  return head
}

const ofAngle = (f: (x: number) => number, derivative: (x: number) => number): FormulaFunction => ({
  arguments: one,
  units: (name, units) => {
    anAngle(name, units)
    return NUMBER
  },
  value: (args, { through }) => through(first(args), f, derivative),
})

const toAngle = (f: (x: number) => number, derivative: (x: number) => number): FormulaFunction => ({
  arguments: one,
  units: (name, units) => {
    aNumber(name, units)
    return ANGLE
  },
  value: (args, { through }) => through(first(args), f, derivative),
})

/** Of a right angle a tangent has no value; what rounding leaves between it and one is not meant. */
const isRightAngle = (x: number): boolean => Math.abs(Math.cos(x)) < 1e-12

const root = (n: number): FormulaFunction => ({
  arguments: one,
  units: (_, units) => ({ length: first(units).length / n, angle: first(units).angle / n }),
  value: (args, { power, exact }) => power(first(args), exact(1 / n)),
})

const chosen = (pick: (...values: number[]) => number): FormulaFunction => ({
  arguments: several,
  units: alike,
  value: (args, { toNumber, exact }) => {
    const chosenValue = pick(...args.map(toNumber))
    return args.find((x) => toNumber(x) === chosenValue) ?? exact(chosenValue)
  },
})

export const FORMULA_FUNCTIONS: Readonly<Record<string, FormulaFunction>> = {
  sqrt: root(2),
  cbrt: {
    ...root(3),
    // A power would have no value for a negative number.
    value: (args, { through }) => through(first(args), Math.cbrt, (x) => 1 / (3 * Math.cbrt(x) ** 2)),
  },
  abs: {
    arguments: one,
    units: (_, units) => first(units),
    // At 0 either slope is as good; taking none would make the value exact.
    value: (args, { through }) => through(first(args), Math.abs, (x) => Math.sign(x) || 1),
  },
  min: chosen(Math.min),
  max: chosen(Math.max),
  hypot: {
    arguments: several,
    units: alike,
    value: (args, { combine }) =>
      combine(
        args,
        (values) => Math.hypot(...values),
        (values) => {
          const r = Math.hypot(...values)
          // At 0 every direction is as good; each alone would change the value by as much.
          return values.map((value) => (r === 0 ? 1 : value / r))
        },
      ),
  },
  sin: ofAngle(Math.sin, Math.cos),
  cos: ofAngle(Math.cos, (x) => -Math.sin(x)),
  tan: ofAngle(
    (x) => (isRightAngle(x) ? Number.NaN : Math.tan(x)),
    (x) => 1 / Math.cos(x) ** 2,
  ),
  asin: toAngle(Math.asin, (x) => 1 / Math.sqrt(1 - x * x)),
  acos: toAngle(Math.acos, (x) => -1 / Math.sqrt(1 - x * x)),
  atan: toAngle(Math.atan, (x) => 1 / (1 + x * x)),
  atan2: {
    arguments: two,
    units: (name, units) => {
      alike(name, units)
      return ANGLE
    },
    value: (args, { combine }) =>
      combine(
        args,
        ([y = 0, x = 0]) => Math.atan2(y, x),
        ([y = 0, x = 0]) => [x / (x * x + y * y), -y / (x * x + y * y)],
      ),
  },
}

export const FUNCTION_NAMES = Object.keys(FORMULA_FUNCTIONS)

/** @throws RangeError for what is none: a formula that was read has no other */
export function functionNamed(name: string): FormulaFunction {
  const does = Object.hasOwn(FORMULA_FUNCTIONS, name) ? FORMULA_FUNCTIONS[name] : undefined
  if (does === undefined) throw new RangeError(`There is no function ${name}.`)
  return does
}
