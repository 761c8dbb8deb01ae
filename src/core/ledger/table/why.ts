import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Decision } from '../adoption/adopt.ts'
import { isVague } from '../adoption/agreement.ts'
import type { Duplicate } from '../adoption/witnesses.ts'
import { ENDS_DIFFER } from '../evidence/ends-differ.ts'
import { type EvaluatedEvidence, isDoubted, type UncheckedView } from '../evidence/evaluated-evidence.ts'
import { READ_AT_EDGES } from '../evidence/read-at-edges.ts'
import { agreementReason } from './agreement-reason.ts'
import type { DoubtfulEnd } from './doubtful-end.ts'
import type { TableRelation } from './table.ts'
import type { Telling } from './telling.ts'

/** What `whyAdopted` tells of. */
export interface Grounds {
  decision: Decision
  /** Expanded uncertainty of the adopted value. */
  U: number
  evaluated: readonly EvaluatedEvidence[]
  restsOn: readonly string[]
  unchecked: readonly UncheckedView[]
  /** The relations that the dimension stands in. */
  relations: readonly TableRelation[]
  telling: Telling
  /** What the value is between, as it is written, where first order does not hold. */
  interval: string | undefined
  /** What it can't be told from. */
  doubtful: DoubtfulEnd | undefined
}

/** Why the adopted value is what it is and how the rest agrees with it: one reason for each sentence. */
export function whyAdopted({
  decision,
  U,
  evaluated,
  restsOn,
  unchecked,
  relations,
  telling,
  interval,
  doubtful,
}: Grounds): AnyReason[] {
  if (decision.adopted === null) return decision.open === undefined ? [] : [decision.open]
  const illegible = evaluated.filter((w) => isIllegible(w) && !decision.from.includes(w))
  const agreement = agreementReason(decision, telling, illegible.length > 0)
  const why: AnyReason[] = [reason('why.adopted', { from: fromOf(decision), agreement })]
  if (interval !== undefined) why.push(reason('why.first-order-fails', { interval }))
  if (doubtful === 'nothing') why.push(reason('why.may-be-nothing'))
  if (doubtful === 'parallel') why.push(reason('why.may-be-parallel'))
  if (restsOn.length > 0) why.push(reason('why.rests-on-disputed', { names: restsOn }))
  for (const { name, because } of unchecked) why.push(reason('why.scale-unchecked', { view: name, because }))
  why.push(
    ...duplicates(decision),
    ...surer(decision, U, telling),
    ...vague(decision, telling),
    ...ofThePicks(decision),
    ...doubted(decision, unchecked),
    ...slips(decision),
    ...notCounted(decision, evaluated),
    ...inRelations(relations),
  )
  return why
}

const isIllegible = (w: EvaluatedEvidence): boolean =>
  !w.usable &&
  w.evidence.withdrawn === undefined &&
  w.evidence.basis === 'printed' &&
  w.evidence.legibility === 'doubtful'

const duplicates = ({ duplicates }: Decision): AnyReason[] =>
  duplicates.map((duplicate) => {
    const scaled = followsFigure(duplicate)
    if (scaled !== undefined) return reason('why.scale-from-figure', { id: scaled.evidence.id })
    const { piece, of } = duplicate
    return reason('why.counts-once', {
      id: piece.evidence.id,
      of: of.evidence.id,
      basis: piece.evidence.basis,
    })
  })

/** Of a figure and what is by a scale that was taken from it: the latter. */
function followsFigure({ piece, of }: Duplicate): EvaluatedEvidence | undefined {
  if (piece.evidence.basis === of.evidence.basis) return undefined
  if (piece.evidence.basis === 'printed') return of
  return of.evidence.basis === 'printed' ? piece : undefined
}

/** A value that agrees and is known better by so much is told. */
const SURER = 2

/** Evidence that agrees and is surer than what is adopted: the rules of adoption say which governs, not which is best. */
function surer({ from, witnesses, status }: Decision, U: number, { told }: Telling): AnyReason[] {
  if (status !== 'agreed' || U === 0) return []
  const best = witnesses
    .filter((w) => !from.includes(w) && (w.coverage?.U ?? Number.POSITIVE_INFINITY) * SURER < U)
    .sort((a, b) => (a.coverage?.U ?? 0) - (b.coverage?.U ?? 0))[0]
  return best === undefined ? [] : [reason('why.surer', told(best))]
}

/** Scales that are spoken against, of what is compared with the value; and any unchecked one that was taken from a figure here. */
function doubted({ witnesses, duplicates }: Decision, told: readonly UncheckedView[]): AnyReason[] {
  const doubts = [
    ...witnesses.flatMap(({ unchecked }) =>
      unchecked !== undefined && isDoubted(unchecked) ? [unchecked] : [],
    ),
    ...duplicates.flatMap((duplicate) => followsFigure(duplicate)?.unchecked ?? []),
  ]
  const views = new Map(doubts.map((one): [string, UncheckedView] => [one.view, one]))
  for (const { view } of told) views.delete(view)
  return [...views.values()].map(({ name, because }) =>
    reason('why.scale-unchecked', { view: name, because }),
  )
}

const SLIPS: ReadonlySet<string> = new Set(['evidence.readings-apart', 'evidence.readings-differ'])

/** Readings that ask whether one of them slipped, where the value or what agrees with it rests on them. */
const slips = ({ witnesses }: Decision): AnyReason[] =>
  witnesses.flatMap(({ remarks = [] }) => remarks.filter(({ code }) => SLIPS.has(code)))

const OF_THE_PICKS: ReadonlySet<string> = new Set([READ_AT_EDGES, ENDS_DIFFER])

/** What is to be said of the picks that the value is from: that an edge was read, that the ends of a slot differ. */
const ofThePicks = ({ from }: Decision): AnyReason[] =>
  from.flatMap(({ remarks = [] }) => remarks.filter(({ code }) => OF_THE_PICKS.has(code)))

/** Evidence that agrees only because it says next to nothing. */
function vague({ from, witnesses }: Decision, { told }: Telling): AnyReason[] {
  return witnesses.flatMap((w) => {
    return from.includes(w) || !isVague(w) ? [] : [reason('why.too-uncertain', told(w))]
  })
}

function notCounted({ from, status }: Decision, evaluated: readonly EvaluatedEvidence[]): AnyReason[] {
  return evaluated.flatMap((w): AnyReason[] => {
    const { evidence } = w
    if (w.usable || from.includes(w) || evidence.withdrawn !== undefined) return []
    const { id, basis } = evidence
    if (w.problem?.code === 'evidence.gives-back-a-reference')
      return [reason('why.gives-back', { id, basis })]
    if (basis !== 'printed') return [reason('why.not-usable', { id, basis })]
    if (w.compared === null) return [reason('why.figure-unread', { id, text: evidence.text })]
    // Where it stands alone, that is said with how the rest agrees.
    return status === 'single' ? [] : [reason('why.figure-hard-to-read', { id })]
  })
}

function inRelations(relations: readonly TableRelation[]): AnyReason[] {
  const checked = relations.filter((r) => r.problemReason === undefined)
  const told = ({ id, text, missesBy }: TableRelation) => ({ id, sum: isSum(text), by: missesBy })
  const broken = checked.filter((r) => !r.holds)
  if (broken.length > 0) return [reason('why.does-not-close', { relations: broken.map(told) })]
  return checked.length === 0 ? [] : [reason('why.closes', { relations: checked.map(told) })]
}

/** Whether a relation adds sizes up; any other ties them together otherwise. */
const isSum = (text: string): boolean => /[+−-]/.test(text)

const isDoubtful = (w: EvaluatedEvidence | undefined): boolean =>
  w?.evidence.basis === 'printed' && w.evidence.legibility === 'doubtful'

function fromOf({ basis, from, chosen, status, witnesses }: Decision): AnyReason {
  const how = { values: from.length, chosen: chosen !== undefined }
  const [first] = from
  // Of figures that differ it is said which one it is.
  const several = status === 'disputed' && witnesses.filter((w) => w.evidence.basis === 'printed').length > 1
  switch (basis) {
    case 'printed':
      return reason('from.figure', {
        chosen: how.chosen,
        ...(isDoubtful(first) ? { doubtful: true } : {}),
        ...(several && first?.evidence.basis === 'printed' ? { of: first.evidence.text } : {}),
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
