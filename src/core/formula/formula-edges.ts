import { underDraw } from '../uncertainty/draws.ts'
import { compileValue, type ValueOf } from './compile-value.ts'
import { constantOf } from './formula-constants.ts'
import type { FormulaNode } from './formula-tree.ts'

/**
 * What a part of a formula must keep to, or the formula has no value or none that is bounded: a divisor must not be
 * nothing, what a root is of not less than that, a sine not beyond one, an angle of a tangent not a right one.
 */
export type EdgeKind = 'divisor' | 'root' | 'sine' | 'tangent'

/** A part of a formula beyond whose edge there is no value. */
export interface FormulaEdge {
  kind: EdgeKind
  /** The part as it is written. */
  text: string
  /** Dimension names in it, each once. */
  names: readonly string[]
  value: ValueOf
}

type Edge = { readonly kind: EdgeKind; readonly part: FormulaNode }

/** The parts of a formula that have an edge, those within others first. Without a dimension in it a part is as it is. */
export function edgesOf(node: FormulaNode, text: string): FormulaEdge[] {
  return [...edgesWithin(node)].flatMap(({ kind, part }) => {
    const names = namesIn(part)
    const written = withoutBrackets(part)
    return names.length === 0
      ? []
      : [{ kind, text: text.slice(written.at, written.end), names, value: compileValue(part) }]
  })
}

function* edgesWithin(node: FormulaNode): Generator<Edge> {
  for (const child of childrenOf(node)) yield* edgesWithin(child)
  if (node.kind === 'binary' && node.does === 'divide') yield { kind: 'divisor', part: node.right }
  if (node.kind === 'binary' && node.does === 'power') yield* edgesOfPower(node.left, node.right)
  if (node.kind !== 'call') return
  const [part] = node.args
  const kind = EDGE_OF_FUNCTION[node.name]
  if (part !== undefined && kind !== undefined) yield { kind, part }
}

const EDGE_OF_FUNCTION: Readonly<Record<string, EdgeKind | undefined>> = {
  sqrt: 'root',
  asin: 'sine',
  acos: 'sine',
  tan: 'tangent',
}

function* edgesOfPower(part: FormulaNode, exponent: FormulaNode): Generator<Edge> {
  const constant = namesIn(exponent).length === 0
  const n = constant ? compileValue(exponent)(() => Number.NaN, PLAIN) : Number.NaN
  if (!Number.isInteger(n)) yield { kind: 'root', part }
  if (!(n >= 0)) yield { kind: 'divisor', part }
}

/** Plain numbers. */
export const PLAIN = underDraw(() => 0)

function childrenOf(node: FormulaNode): readonly FormulaNode[] {
  if (node.kind === 'call') return node.args
  if (node.kind === 'binary') return [node.left, node.right]
  return node.kind === 'negative' || node.kind === 'group' ? [node.of] : []
}

function namesIn(node: FormulaNode): readonly string[] {
  const names = new Set<string>()
  const look = (part: FormulaNode): void => {
    if (part.kind === 'name' && constantOf(part.name) === undefined) names.add(part.name)
    childrenOf(part).forEach(look)
  }
  look(node)
  return [...names]
}

const withoutBrackets = (node: FormulaNode): FormulaNode =>
  node.kind === 'group' ? withoutBrackets(node.of) : node

/** Whether a formula only adds its dimensions up, each times a number: first order is then all there is. */
export function isLinear(node: FormulaNode): boolean {
  switch (node.kind) {
    case 'number':
    case 'quantity':
    case 'name':
      return true
    case 'group':
    case 'negative':
      return isLinear(node.of)
    case 'call':
      return isConstant(node)
    case 'binary': {
      const { does, left, right } = node
      if (does === 'add' || does === 'subtract') return isLinear(left) && isLinear(right)
      if (does === 'divide') return isLinear(left) && isConstant(right)
      if (does === 'multiply') {
        return (isConstant(left) && isLinear(right)) || (isLinear(left) && isConstant(right))
      }
      return isConstant(node)
    }
  }
}

const isConstant = (node: FormulaNode): boolean => namesIn(node).length === 0
