import { expand } from '../../uncertainty/coverage.ts'
import type { Decision } from '../adoption/adopt.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { TableRelation } from './table.ts'

/** What `whyAdopted` tells of. */
export interface Reasons {
  decision: Decision
  evaluated: readonly EvaluatedEvidence[]
  restsOn: readonly string[]
  /** The relations that the dimension stands in. */
  relations: readonly TableRelation[]
  /** Shop notation of a piece of evidence. */
  writtenOf(w: EvaluatedEvidence): string
}

/** Says in a few sentences why the adopted value is what it is and how the rest agrees with it. */
export function whyAdopted({ decision, evaluated, restsOn, relations, writtenOf }: Reasons): string {
  if (decision.adopted === null) return decision.open ?? 'There is no usable evidence.'
  const parts = [`${lead(decision)}${standing(decision, writtenOf)}.`]
  if (restsOn.length > 0) {
    parts.push(`It rests on ${restsOn.join(' and ')}, which ${restsOn.length > 1 ? 'are' : 'is'} disputed.`)
  }
  parts.push(...vague(decision, writtenOf), ...notCounted(decision, evaluated), ...inRelations(relations))
  return parts.join(' ')
}

/** Evidence that agrees only because it says next to nothing. */
function vague({ from, pairs }: Decision, writtenOf: (w: EvaluatedEvidence) => string): string[] {
  const others = new Set(pairs.flatMap((p) => [p.a, p.b]).filter((w) => !from.includes(w)))
  return [...others].flatMap((w) => {
    if (w.compared === null) return []
    const { U } = expand(w.compared)
    return U > VAGUE * Math.abs(w.compared.value)
      ? [`The ${w.evidence.basis} value ${writtenOf(w)} is too uncertain to say much.`]
      : []
  })
}

/** An expanded uncertainty above this share of the value leaves little to agree with. */
const VAGUE = 0.2

function notCounted({ from }: Decision, evaluated: readonly EvaluatedEvidence[]): string[] {
  return evaluated.flatMap((w) => {
    if (w.usable || from.includes(w) || w.evidence.withdrawn !== undefined) return []
    if (w.evidence.basis !== 'printed')
      return [`Its ${w.evidence.basis} evidence ${w.evidence.id} can't be used.`]
    return w.compared === null
      ? [`The printed figure "${w.evidence.text}" can't be read and was not counted.`]
      : ['A printed figure that is hard to read was not counted.']
  })
}

function inRelations(relations: readonly TableRelation[]): string[] {
  const checked = relations.filter((r) => r.problem === undefined)
  const broken = checked.filter((r) => !r.holds).map((r) => r.id)
  if (broken.length > 0) {
    return [`It stands in ${broken.join(' and ')}, which ${broken.length > 1 ? 'do' : 'does'} not close.`]
  }
  const closed = checked.map((r) => r.id)
  return closed.length === 0 ? [] : [`It closes in ${closed.join(' and ')}.`]
}

function lead({ basis, from, chosen }: Decision): string {
  const choice = chosen === undefined ? '' : ', by choice'
  const [first] = from
  switch (basis) {
    case 'printed':
      return `The printed figure governs${choice}`
    case 'derived':
      return first?.evidence.basis === 'derived'
        ? `Worked out from ${first.evidence.formula}${choice}`
        : 'Worked out from other dimensions'
    case 'scaled':
      return from.length === 1
        ? `Scaled off the sheet${choice}`
        : `Mean of ${from.length} scaled values${choice}`
    case 'found':
      return from.length === 1
        ? `Measured on the original${choice}`
        : `Mean of ${from.length} measurements of the original${choice}`
    default:
      return `Weighted mean of ${from.length} pieces of evidence${choice}`
  }
}

function standing({ status, pairs, from }: Decision, writtenOf: (w: EvaluatedEvidence) => string): string {
  if (status === 'single') return '; there is no other evidence'
  // What disputes the adopted evidence is told first; a quarrel among the others comes after.
  const worst = [...pairs].sort((p, q) => rank(q, from) - rank(p, from))[0]
  if (worst === undefined) return ''
  if (status === 'agreed') {
    const largest = Math.max(...pairs.map((p) => p.en))
    return `; ${othersInWords(pairs, from, worst)} (E_n ${enText(largest)})`
  }
  const adoptedIn = from.includes(worst.a) !== from.includes(worst.b)
  const en = `(E_n ${enText(worst.en)})`
  if (adoptedIn) {
    const other = otherOf(worst, from)
    return `, but ${other.evidence.basis} ${writtenOf(other)} disputes it ${en}`
  }
  return `, but ${worst.a.evidence.basis} ${writtenOf(worst.a)} and ${worst.b.evidence.basis} ${writtenOf(worst.b)} dispute ${en}`
}

function othersInWords(
  pairs: Decision['pairs'],
  from: readonly EvaluatedEvidence[],
  worst: Decision['pairs'][number],
): string {
  if (pairs.length > 1) return 'all other evidence agrees'
  const { basis } = otherOf(worst, from).evidence
  return basis === 'printed' && from[0]?.evidence.basis === 'printed'
    ? 'it stands on the sheet twice alike'
    : `the ${basis} value agrees`
}

const otherOf = (pair: Decision['pairs'][number], from: readonly EvaluatedEvidence[]): EvaluatedEvidence =>
  from.includes(pair.a) ? pair.b : pair.a

const rank = (pair: Decision['pairs'][number], from: readonly EvaluatedEvidence[]): number =>
  pair.en + (pair.en > 1 && from.includes(pair.a) !== from.includes(pair.b) ? 1000 : 0)

const enText = (en: number): string => (en >= 100 ? 'over 100' : en.toFixed(1))
