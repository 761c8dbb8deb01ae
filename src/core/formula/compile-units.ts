import { FIRST_ORDER } from '../uncertainty/first-order.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { type CoreReason, reason } from '../words/core-words.ts'
import { compileValue } from './compile-value.ts'
import { constantOf } from './formula-constants.ts'
import { FormulaError, stoppedAt } from './formula-error.ts'
import { functionNamed } from './formula-functions.ts'
import type { FormulaNode } from './formula-tree.ts'
import { ANGLE, LENGTH, NUMBER, sameUnits, type Units, unitsInWords } from './formula-units.ts'

/** Units of a formula, given those of each name; throws FormulaError where units are mixed. */
export type UnitsOf = (of: (name: string) => Units) => Units

type Binary = Extract<FormulaNode, { kind: 'binary' }>

/**
 * Turns a tree into a function that gives its units.
 * @param text the formula, for the places in it
 * @param names collects the names it uses
 */
export function compileUnits(node: FormulaNode, text: string, names: Set<string>): UnitsOf {
  switch (node.kind) {
    case 'number':
      return () => NUMBER
    case 'quantity':
      return () => node.units
    case 'group':
    case 'negative':
      return compileUnits(node.of, text, names)
    case 'name': {
      const { name } = node
      const constant = constantOf(name)
      if (constant !== undefined) return () => constant.units
      names.add(name)
      return (of) => of(name)
    }
    case 'call': {
      const { name, args } = node
      const does = functionNamed(name)
      const parts = args.map((a) => compileUnits(a, text, names))
      return (of) => {
        const units = parts.map((p) => p(of))
        try {
          return does.units(name, units)
        } catch (error) {
          if (error instanceof FormulaError && error.place === undefined) {
            throw stoppedAt(text, node.at, error.reason as CoreReason)
          }
          throw error
        }
      }
    }
    case 'binary':
      return compileOperatorUnits(node, text, names)
  }
}

function compileOperatorUnits(node: Binary, text: string, names: Set<string>): UnitsOf {
  const a = compileUnits(node.left, text, names)
  const b = compileUnits(node.right, text, names)
  switch (node.does) {
    case 'add':
    case 'subtract':
      return (of) => {
        const [left, right] = [a(of), b(of)]
        if (sameUnits(left, right)) return left
        throw mixed(node, text, left, right)
      }
    case 'multiply':
      return (of) => plusUnits(a(of), b(of), 1)
    case 'divide':
      return (of) => plusUnits(a(of), b(of), -1)
    case 'power': {
      const exponent = node.right
      return (of) => {
        const [ua, ub] = [a(of), b(of)]
        if (!sameUnits(ub, NUMBER)) {
          const told = { expression: written(node, text), exponent: unitsInWords(ub) }
          throw stoppedAt(text, exponent.at, reason('formula.exponent-with-units', told))
        }
        if (sameUnits(ua, NUMBER)) return NUMBER
        const n = constantValue(exponent, text)
        return { length: ua.length * n, angle: ua.angle * n }
      }
    }
  }
}

const written = ({ at, end }: FormulaNode, text: string): string => text.slice(at, end)

/** What a sum mixes; of a bare number beside a length or an angle, that its unit is missing. */
function mixed({ does, ...node }: Binary, text: string, left: Units, right: Units): FormulaError {
  const whole = {
    expression: written({ does, ...node }, text),
    left: unitsInWords(left),
    with: does === 'add' ? 'plus' : 'minus',
    right: unitsInWords(right),
  } as const
  const [bare, beside] = isBare(node.right) ? [node.right, left] : [node.left, right]
  const wanted = sameUnits(beside, LENGTH) ? 'length' : sameUnits(beside, ANGLE) ? 'angle' : undefined
  if (isBare(bare) && wanted !== undefined) {
    const number = written(bare, text)
    return stoppedAt(text, bare.at, reason('formula.number-without-unit', { ...whole, number, wanted }))
  }
  return stoppedAt(text, node.right.at, reason('formula.mixes-units', whole))
}

const isBare = (node: FormulaNode): boolean =>
  node.kind === 'number' ||
  ((node.kind === 'negative' || node.kind === 'group') && isBare(node.of)) ||
  (node.kind === 'binary' && node.does === 'divide' && isBare(node.left) && isBare(node.right))

function constantValue(node: FormulaNode, text: string): number {
  return compileValue(node)((name): Uncertain => {
    throw stoppedAt(text, node.at, reason('formula.exponent-is-a-dimension', { name }))
  }, FIRST_ORDER).value
}

const plusUnits = (a: Units, b: Units, sign: 1 | -1): Units => ({
  length: a.length + sign * b.length,
  angle: a.angle + sign * b.angle,
})
