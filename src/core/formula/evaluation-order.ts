import type { Dimension } from '../job/model/types.ts'
import { parseFormula } from './formula.ts'
import { FormulaError } from './formula-error.ts'

/** Formulas of a dimension that count. */
export function activeFormulas(dimension: Dimension): string[] {
  return dimension.evidence.flatMap((e) =>
    e.basis === 'derived' && e.withdrawn === undefined ? [e.formula] : [],
  )
}

/**
 * The dimensions in an order in which each comes after those its formulas use,
 * or the names of a circle when there is none, each followed by one it uses.
 * Names that no dimension has are passed over.
 * @param uses the names in the formulas of a dimension that count
 */
export function evaluationOrder(
  dimensions: readonly Dimension[],
  uses: (dimension: Dimension) => readonly string[] = usesOf,
): { order: Dimension[] } | { circle: string[] } {
  const byName = new Map(dimensions.map((d) => [d.name, d]))
  const done = new Set<string>()
  const order: Dimension[] = []
  for (const start of dimensions) {
    if (done.has(start.name)) continue
    // An explicit stack: a chain of thousands of formulas must not exhaust the call stack.
    const path: { dimension: Dimension; uses: readonly string[]; next: number }[] = []
    const onPath = new Set<string>()
    const enter = (dimension: Dimension): void => {
      path.push({ dimension, uses: uses(dimension), next: 0 })
      onPath.add(dimension.name)
    }
    enter(start)
    while (path.length > 0) {
      const top = path[path.length - 1] as (typeof path)[number]
      const name = top.uses[top.next++]
      if (name === undefined) {
        path.pop()
        onPath.delete(top.dimension.name)
        done.add(top.dimension.name)
        order.push(top.dimension)
        continue
      }
      const used = byName.get(name)
      if (used === undefined || done.has(name)) continue
      if (onPath.has(name)) {
        const names = path.map((p) => p.dimension.name)
        return { circle: [...names.slice(names.indexOf(name)), name] }
      }
      enter(used)
    }
  }
  return { order }
}

/** The names in the formulas of a dimension that count; one that can't be read uses none, for it gives no value. */
export const usesOf = (dimension: Dimension): string[] =>
  activeFormulas(dimension).flatMap((text) => {
    try {
      return parseFormula(text).names
    } catch (error) {
      if (error instanceof FormulaError) return []
      throw error
    }
  })
