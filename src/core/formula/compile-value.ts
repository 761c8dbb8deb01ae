import type { Arithmetic } from '../uncertainty/arithmetic.ts'
import { constantOf } from './formula-constants.ts'
import { functionNamed } from './formula-functions.ts'
import type { FormulaNode } from './formula-tree.ts'

/** Value of a formula in an arithmetic, given that of each name. */
export type ValueOf = <N>(of: (name: string) => N, arithmetic: Arithmetic<N>) => N

/** Turns a tree into a function that gives its value in mm, mm², radians or a plain number. */
export function compileValue(node: FormulaNode): ValueOf {
  switch (node.kind) {
    case 'number':
    case 'quantity': {
      const { value } = node
      return (_, { exact }) => exact(value)
    }
    case 'group':
      return compileValue(node.of)
    case 'negative': {
      const of = compileValue(node.of)
      return (names, arithmetic) => arithmetic.scale(of(names, arithmetic), -1)
    }
    case 'name': {
      const { name } = node
      const constant = constantOf(name)
      return constant === undefined ? (of) => of(name) : (_, { exact }) => exact(constant.value)
    }
    case 'call': {
      const does = functionNamed(node.name)
      const parts = node.args.map(compileValue)
      return (of, arithmetic) =>
        does.value(
          parts.map((part) => part(of, arithmetic)),
          arithmetic,
        )
    }
    case 'binary': {
      const { does } = node
      const [a, b] = [compileValue(node.left), compileValue(node.right)]
      return (of, arithmetic) => arithmetic[does](a(of, arithmetic), b(of, arithmetic))
    }
  }
}
