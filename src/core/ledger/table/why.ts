import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Decision } from '../adoption/adopt.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { TableRelation } from './table.ts'

/** What `whyAdopted` tells of. */
export interface Grounds {
  decision: Decision
  evaluated: readonly EvaluatedEvidence[]
  restsOn: readonly string[]
  /** The relations that the dimension stands in. */
  relations: readonly TableRelation[]
  /** Shop notation of a piece of evidence. */
  writtenOf(w: EvaluatedEvidence): string
}

/** Why the adopted value is what it is and how the rest agrees with it: one reason for each sentence. */
export function whyAdopted({ decision, evaluated, restsOn, relations, writtenOf }: Grounds): AnyReason[] {
  if (decision.adopted === null) return decision.open === undefined ? [] : [decision.open]
  const why: AnyReason[] = [
    reason('why.adopted', { from: fromOf(decision), agreement: agreementOf(decision, writtenOf) }),
  ]
  if (restsOn.length > 0) why.push(reason('why.rests-on-disputed', { names: restsOn }))
  why.push(...vague(decision, writtenOf), ...notCounted(decision, evaluated), ...inRelations(relations))
  return why
}

type WrittenOf = Grounds['writtenOf']

const toldOf = (w: EvaluatedEvidence, writtenOf: WrittenOf) => ({
  id: w.evidence.id,
  basis: w.evidence.basis,
  written: writtenOf(w),
})

/** Evidence that agrees only because it says next to nothing. */
function vague({ from, pairs }: Decision, writtenOf: WrittenOf): AnyReason[] {
  const others = new Set(pairs.flatMap((p) => [p.a, p.b]).filter((w) => !from.includes(w)))
  return [...others].flatMap((w) => {
    if (w.compared === null || w.coverage === null) return []
    return w.coverage.U > VAGUE * Math.abs(w.compared.value)
      ? [reason('why.too-uncertain', toldOf(w, writtenOf))]
      : []
  })
}

/** An expanded uncertainty above this share of the value leaves little to agree with. */
const VAGUE = 0.2

function notCounted({ from }: Decision, evaluated: readonly EvaluatedEvidence[]): AnyReason[] {
  return evaluated.flatMap((w): AnyReason[] => {
    const { evidence } = w
    if (w.usable || from.includes(w) || evidence.withdrawn !== undefined) return []
    const { id, basis } = evidence
    if (basis !== 'printed') return [reason('why.not-usable', { id, basis })]
    return w.compared === null
      ? [reason('why.figure-unread', { id, text: evidence.text })]
      : [reason('why.figure-hard-to-read', { id })]
  })
}

function inRelations(relations: readonly TableRelation[]): AnyReason[] {
  const checked = relations.filter((r) => r.problemReason === undefined)
  const broken = checked.filter((r) => !r.holds).map((r) => r.id)
  if (broken.length > 0) return [reason('why.does-not-close', { relations: broken })]
  const closed = checked.map((r) => r.id)
  return closed.length === 0 ? [] : [reason('why.closes', { relations: closed })]
}

const isDoubtful = (w: EvaluatedEvidence | undefined): boolean =>
  w?.evidence.basis === 'printed' && w.evidence.legibility === 'doubtful'

function fromOf({ basis, from, chosen }: Decision): AnyReason {
  const how = { values: from.length, chosen: chosen !== undefined }
  const [first] = from
  switch (basis) {
    case 'printed':
      return reason('from.figure', {
        chosen: how.chosen,
        ...(isDoubtful(first) ? { doubtful: true } : {}),
      })
    case 'derived': {
      const formula = first?.evidence.basis === 'derived' ? first.evidence.formula : ''
      return reason('from.formula', { formula, chosen: how.chosen })
    }
    case 'scaled':
      return reason('from.sheet', how)
    case 'found':
      return reason('from.original', how)
    default:
      return reason('from.mean', how)
  }
}

function agreementOf({ status, pairs, from }: Decision, writtenOf: WrittenOf): AnyReason | null {
  if (status === 'single') {
    const limits = pairs.flatMap(({ a, b }) => (a.limit ? [a] : b.limit ? [b] : []))
    if (limits.length === 0) return reason('agreement.alone')
    return reason('agreement.within-limits', { limits: limits.map((w) => writtenOf(w)) })
  }
  // What disputes the adopted evidence is told first; a quarrel among the others comes after.
  const worst = [...pairs].sort((p, q) => rank(q, from) - rank(p, from))[0]
  if (worst === undefined) return null
  if (status === 'agreed') return agreed(pairs, from, worst)
  const { en } = worst
  if (from.includes(worst.a) !== from.includes(worst.b)) {
    return reason('agreement.disputed', { by: toldOf(otherOf(worst, from), writtenOf), en })
  }
  return reason('agreement.others-dispute', {
    one: toldOf(worst.a, writtenOf),
    other: toldOf(worst.b, writtenOf),
    en,
  })
}

function agreed(
  pairs: Decision['pairs'],
  from: readonly EvaluatedEvidence[],
  worst: Decision['pairs'][number],
): AnyReason {
  const en = Math.max(...pairs.map((p) => p.en))
  if (pairs.length > 1) return reason('agreement.all', { en })
  const { basis } = otherOf(worst, from).evidence
  return basis === 'printed' && from[0]?.evidence.basis === 'printed'
    ? reason('agreement.figure-twice', { en })
    : reason('agreement.one', { other: basis, en })
}

const otherOf = (pair: Decision['pairs'][number], from: readonly EvaluatedEvidence[]): EvaluatedEvidence =>
  from.includes(pair.a) ? pair.b : pair.a

const rank = (pair: Decision['pairs'][number], from: readonly EvaluatedEvidence[]): number =>
  pair.en + (pair.en > 1 && from.includes(pair.a) !== from.includes(pair.b) ? 1000 : 0)
