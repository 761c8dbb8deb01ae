import { evaluationOrder } from '../../formula/evaluation-order.ts'
import { type Formula, parseFormula } from '../../formula/formula.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { sameUnits, UNITS_OF_KIND, type Units, unitsInWords } from '../../formula/formula-units.ts'
import { parseRelation } from '../../formula/relation-text.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { type AnyReason, isReason } from '../../words/reason.ts'
import type { Dimension } from '../model/types.ts'
import type { CheckContext } from './check-context.ts'

/** What kind of dimension goes by a name; undefined where none does. */
type KindOf = (name: string) => QuantityKind | undefined

/**
 * The first thing wrong with the formulas and relations of what is checked: unreadable, a name no dimension has, mixed
 * units, a circle.
 *
 * @param together the dimensions among which there must be no circle
 */
export function checkFormulas(
  { job, items, kept = false }: CheckContext,
  together: readonly Dimension[] = job.dimensions,
): CoreReason | null {
  const kinds: KindOf = (name) => items.dimension.get(name)?.kind
  for (const dimension of job.dimensions) {
    for (const evidence of dimension.evidence) {
      if (evidence.basis !== 'derived' || evidence.withdrawn !== undefined) continue
      const problem = tried(() => problemOf(evidence.formula, dimension.kind, kinds))
      if (problem === null || (kept && wasTaken(problem))) continue
      return reason('formula.of-evidence', { dimension: dimension.name, evidence: evidence.id, problem })
    }
  }
  const order = evaluationOrder(together)
  if ('circle' in order) return reason('formula.circle-to-break', { names: order.circle })
  for (const relation of job.relations) {
    const problem = tried(() => problemOfRelation(relation.text, kinds))
    if (problem === null || (kept && wasTaken(problem))) continue
    return reason('formula.of-relation', { relation: relation.id, problem })
  }
  return null
}

/**
 * Two names side by side were a product once, % was a hundredth, and a remark in a relation ended at its `=`. A job that
 * has such a formula opens still, and is told what is wrong with it.
 */
function wasTaken(problem: AnyReason): boolean {
  const within = problem.parts['problem']
  return isTakenBefore(problem) || (isReason(within) && wasTaken(within))
}

const isTakenBefore = ({ code, parts }: AnyReason): boolean =>
  code === 'formula.nothing-between' ||
  (code === 'formula.no-part-of-formulas' && parts['expression'] === '%') ||
  (code === 'formula.relation-without-sides' && String(parts['text']).split('=').length === 2)

/** The problem that is found, or that reading the formula fails by. */
function tried(check: () => CoreReason | null): CoreReason | null {
  try {
    return check()
  } catch (error) {
    if (error instanceof FormulaError) return error.reason
    throw error
  }
}

function problemOf(text: string, kind: QuantityKind, kinds: KindOf): CoreReason | null {
  const units = unitsOf(parseFormula(text), kinds)
  if ('code' in units) return units
  if (suits(units, kind)) return null
  return reason('formula.of-another-kind', {
    text,
    gives: unitsInWords(units),
    wanted: unitsInWords(UNITS_OF_KIND[kind]),
  })
}

function problemOfRelation(text: string, kinds: KindOf): CoreReason | null {
  const { left, right } = parseRelation(text)
  const [a, b] = [unitsOf(left, kinds), unitsOf(right, kinds)]
  if ('code' in a) return a
  if ('code' in b) return b
  if (sameUnits(a, b)) return null
  return reason('formula.relation-mixes-units', { text, left: unitsInWords(a), right: unitsInWords(b) })
}

/** The units of a formula, or the name in it that no dimension has. */
function unitsOf(formula: Formula, kinds: KindOf): Units | CoreReason {
  const name = formula.names.find((one) => kinds(one) === undefined)
  if (name !== undefined) return reason('formula.no-such-name', { text: formula.text, name })
  return formula.units((one) => UNITS_OF_KIND[kinds(one) ?? 'count'])
}

/** Radians are pure numbers, so an angle times a length is a length (an arc). A plain number is no angle. */
const suits = (units: Units, kind: QuantityKind): boolean =>
  units.length === UNITS_OF_KIND[kind].length &&
  (kind === 'length' || kind === 'area' || units.angle === UNITS_OF_KIND[kind].angle)
