import type { MathNode, OperatorNode, SymbolNode } from 'mathjs/number'
import type { Arithmetic } from '../uncertainty/arithmetic.ts'
import { constantOf } from './formula-constants.ts'
import { functionOf, inner, numberOf, refuse } from './formula-nodes.ts'

/** Value of a formula in an arithmetic, given that of each name. */
export type ValueOf = <N>(of: (name: string) => N, arithmetic: Arithmetic<N>) => N

const BINARY = {
  add: 'add',
  subtract: 'subtract',
  multiply: 'multiply',
  divide: 'divide',
  pow: 'power',
} as const

const isBinary = (fn: string): fn is keyof typeof BINARY => Object.hasOwn(BINARY, fn)

/**
 * Turns an expression tree into a function that gives its value in mm, mm², radians or a plain number.
 * @throws FormulaError for what is not part of formulas
 */
export function compileValue(node: MathNode): ValueOf {
  switch (node.type) {
    case 'ConstantNode': {
      const value = numberOf(node)
      return (_, { exact }) => exact(value)
    }
    case 'ParenthesisNode':
      return compileValue(inner(node))
    case 'SymbolNode': {
      const { name } = node as SymbolNode
      const constant = constantOf(name)
      return constant === undefined ? (of) => of(name) : (_, { exact }) => exact(constant.value)
    }
    case 'FunctionNode': {
      const { args, does } = functionOf(node)
      const parts = args.map(compileValue)
      return (of, arithmetic) =>
        does.value(
          parts.map((part) => part(of, arithmetic)),
          arithmetic,
        )
    }
    case 'OperatorNode': {
      const { fn, args } = node as OperatorNode
      const name: string = fn
      const [a, b] = (args as MathNode[]).map(compileValue)
      if (a === undefined) return refuse(node)
      if (b === undefined) {
        return name === 'unaryMinus' ? (of, arithmetic) => arithmetic.scale(a(of, arithmetic), -1) : a
      }
      if (!isBinary(name)) return refuse(node)
      const combine = BINARY[name]
      return (of, arithmetic) => arithmetic[combine](a(of, arithmetic), b(of, arithmetic))
    }
    default:
      return refuse(node)
  }
}
