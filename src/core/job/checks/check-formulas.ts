import { evaluationOrder } from '../../formula/evaluation-order.ts'
import { type Formula, parseFormula } from '../../formula/formula.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { sameUnits, UNITS_OF_KIND, type Units, unitsInWords } from '../../formula/formula-units.ts'
import { parseRelation } from '../../formula/relation-text.ts'
import type { DimensionKind, Job } from '../model/types.ts'

/**
 * The first thing wrong with the formulas and relations of a job, as a sentence, or null:
 * unreadable, a name no dimension has, mixed units, a circle.
 */
export function checkFormulas(job: Job): string | null {
  const kinds = new Map(job.dimensions.map((d) => [d.name, d.kind]))
  for (const dimension of job.dimensions) {
    for (const evidence of dimension.evidence) {
      if (evidence.basis !== 'derived' || evidence.withdrawn !== undefined) continue
      const problem = problemOf(evidence.formula, dimension.kind, kinds)
      if (problem !== null) {
        return `Dimension "${dimension.name}", evidence "${evidence.id}": ${problem}.`
      }
    }
  }
  const order = evaluationOrder(job.dimensions)
  if ('circle' in order) {
    return `The formulas run in a circle: ${order.circle.join(' uses ')}. Withdraw one of them.`
  }
  for (const relation of job.relations) {
    const problem = problemOfRelation(relation.text, kinds)
    if (problem !== null) return `Relation "${relation.id}": ${problem}.`
  }
  return null
}

function problemOf(text: string, kind: DimensionKind, kinds: Map<string, DimensionKind>): string | null {
  return inWords(() => {
    const units = unitsOf(parseFormula(text), kinds)
    if (!suits(units, kind)) {
      throw new FormulaError(
        `the formula \`${text}\` gives ${unitsInWords(units)}, but the dimension is ${unitsInWords(UNITS_OF_KIND[kind])}`,
      )
    }
  })
}

function problemOfRelation(text: string, kinds: Map<string, DimensionKind>): string | null {
  return inWords(() => {
    const { left, right } = parseRelation(text)
    const [a, b] = [unitsOf(left, kinds), unitsOf(right, kinds)]
    if (!sameUnits(a, b)) {
      throw new FormulaError(`\`${text}\` mixes units: ${unitsInWords(a)} = ${unitsInWords(b)}`)
    }
  })
}

function unitsOf(formula: Formula, kinds: Map<string, DimensionKind>): Units {
  return formula.units((name) => {
    const kind = kinds.get(name)
    if (kind === undefined) {
      throw new FormulaError(`\`${formula.text}\` uses ${name}, but no dimension has that name`)
    }
    return UNITS_OF_KIND[kind]
  })
}

/** Radians are pure numbers, so an angle times a length is a length (an arc). A plain number is no angle. */
const suits = (units: Units, kind: DimensionKind): boolean =>
  units.length === UNITS_OF_KIND[kind].length &&
  (kind === 'length' || kind === 'area' || units.angle === UNITS_OF_KIND[kind].angle)

function inWords(check: () => void): string | null {
  try {
    check()
    return null
  } catch (error) {
    if (error instanceof FormulaError) return error.message
    throw error
  }
}
