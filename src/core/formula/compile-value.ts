import type { MathNode, OperatorNode, SymbolNode } from 'mathjs/number'
import { add, divide, multiply, power, scale, subtract } from '../uncertainty/arithmetic.ts'
import { exact, type Uncertain } from '../uncertainty/uncertain.ts'
import { constantOf } from './formula-constants.ts'
import { functionOf, inner, numberOf, refuse } from './formula-nodes.ts'

/** Value of a formula with its uncertainty, given that of each name. */
export type ValueOf = (of: (name: string) => Uncertain) => Uncertain

const BINARY: Readonly<Record<string, (a: Uncertain, b: Uncertain) => Uncertain>> = {
  add,
  subtract,
  multiply,
  divide,
  pow: power,
}

/**
 * Turns an expression tree into a function that gives its value in mm, mm², radians or a plain number.
 * @throws FormulaError for what is not part of formulas
 */
export function compileValue(node: MathNode): ValueOf {
  switch (node.type) {
    case 'ConstantNode': {
      const value = exact(numberOf(node))
      return () => value
    }
    case 'ParenthesisNode':
      return compileValue(inner(node))
    case 'SymbolNode': {
      const { name } = node as SymbolNode
      const constant = constantOf(name)
      if (constant === undefined) return (of) => of(name)
      const value = exact(constant.value)
      return () => value
    }
    case 'FunctionNode': {
      const { args, does } = functionOf(node)
      const parts = args.map(compileValue)
      return (of) => does.value(parts.map((p) => p(of)))
    }
    case 'OperatorNode': {
      const { fn, args } = node as OperatorNode
      const [a, b] = (args as MathNode[]).map(compileValue)
      if (a === undefined) return refuse(node)
      if (b === undefined) return fn === 'unaryMinus' ? (of) => scale(a(of), -1) : a
      const combine = BINARY[fn as string]
      return combine === undefined ? refuse(node) : (of) => combine(a(of), b(of))
    }
    default:
      return refuse(node)
  }
}
