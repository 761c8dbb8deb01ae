import type { MathNode, OperatorNode, SymbolNode } from 'mathjs/number'
import { FIRST_ORDER } from '../uncertainty/first-order.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import { compileValue } from './compile-value.ts'
import { constantOf } from './formula-constants.ts'
import { FormulaError } from './formula-error.ts'
import { functionOf, inner, numberOf, refuse } from './formula-nodes.ts'
import { NUMBER, sameUnits, type Units, unitsInWords } from './formula-units.ts'

/** Units of a formula, given those of each name; throws FormulaError where units are mixed. */
export type UnitsOf = (of: (name: string) => Units) => Units

/**
 * Turns an expression tree into a function that gives its units.
 * @param names collects the names it uses
 * @throws FormulaError for what is not part of formulas
 */
export function compileUnits(node: MathNode, names: Set<string>): UnitsOf {
  switch (node.type) {
    case 'ConstantNode':
      numberOf(node)
      return () => NUMBER
    case 'ParenthesisNode':
      return compileUnits(inner(node), names)
    case 'SymbolNode': {
      const { name } = node as SymbolNode
      const constant = constantOf(name)
      if (constant !== undefined) return () => constant.units
      names.add(name)
      return (of) => of(name)
    }
    case 'FunctionNode': {
      const { name, args, does } = functionOf(node)
      const parts = args.map((a) => compileUnits(a, names))
      return (of) =>
        does.units(
          name,
          parts.map((p) => p(of)),
        )
    }
    case 'OperatorNode':
      return compileOperatorUnits(node as OperatorNode, names)
    default:
      return refuse(node)
  }
}

function compileOperatorUnits(node: OperatorNode, names: Set<string>): UnitsOf {
  const operands = node.args as MathNode[]
  const [a, b] = operands.map((arg) => compileUnits(arg, names))
  if (a === undefined) return refuse(node)
  if (b === undefined) return node.fn === 'unaryMinus' || node.fn === 'unaryPlus' ? a : refuse(node)
  switch (node.fn as string) {
    case 'add':
    case 'subtract':
      return (of) => {
        const [ua, ub] = [a(of), b(of)]
        if (sameUnits(ua, ub)) return ua
        throw new FormulaError(
          reason('formula.mixes-units', {
            expression: node.toString(),
            left: unitsInWords(ua),
            with: node.fn === 'add' ? 'plus' : 'minus',
            right: unitsInWords(ub),
          }),
        )
      }
    case 'multiply':
      return (of) => plusUnits(a(of), b(of), 1)
    case 'divide':
      return (of) => plusUnits(a(of), b(of), -1)
    case 'pow': {
      const exponent = operands[1] as MathNode
      return (of) => {
        const [ua, ub] = [a(of), b(of)]
        if (!sameUnits(ub, NUMBER)) {
          throw new FormulaError(
            reason('formula.exponent-with-units', {
              expression: node.toString(),
              exponent: unitsInWords(ub),
            }),
          )
        }
        if (sameUnits(ua, NUMBER)) return NUMBER
        const n = constantValue(exponent)
        return { length: ua.length * n, angle: ua.angle * n }
      }
    }
    default:
      return refuse(node)
  }
}

function constantValue(node: MathNode): number {
  return compileValue(node)((name): Uncertain => {
    throw new FormulaError(reason('formula.exponent-is-a-dimension', { name }))
  }, FIRST_ORDER).value
}

const plusUnits = (a: Units, b: Units, sign: 1 | -1): Units => ({
  length: a.length + sign * b.length,
  angle: a.angle + sign * b.angle,
})
