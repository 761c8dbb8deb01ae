import { expand } from '../../uncertainty/coverage.ts'
import { normalisedError, squaredU } from '../../uncertainty/normalised-error.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { type Decision, meanOfEvidence } from '../adoption/adopt.ts'
import { detectableError, isBeyondLimit } from '../adoption/agreement.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { Telling } from './telling.ts'

/**
 * How the rest of the evidence agrees with the adopted value, and what that could have shown; null where there is no
 * value.
 * @param illegible whether there is a printed figure besides, too hard to read to count
 */
export function agreementReason(decision: Decision, telling: Telling, illegible: boolean): AnyReason | null {
  switch (decision.status) {
    case 'open':
      return null
    case 'single':
      return alone(decision, telling, illegible)
    case 'agreed':
      return agreed(decision, telling)
    case 'disputed':
      return beyondLimit(decision, telling) ?? disputed(decision, telling)
  }
}

function alone({ pairs, witnesses }: Decision, { told }: Telling, illegible: boolean): AnyReason {
  const limits = pairs.flatMap(({ a, b }) => (a.limit ? [a] : b.limit ? [b] : []))
  if (limits.length > 0) {
    return reason('agreement.within-limits', { limits: limits.map((w) => told(w).written) })
  }
  if (witnesses.length > 1) return reason('agreement.nothing-else-tells')
  return illegible ? reason('agreement.nothing-else-legible') : reason('agreement.alone')
}

const isPrinted = ({ evidence }: EvaluatedEvidence): boolean => evidence.basis === 'printed'

function agreed({ from, witnesses, duplicates }: Decision, { about }: Telling): AnyReason {
  const own = ownWitnesses(from, witnesses, duplicates)
  const others = witnesses.filter((w) => !own.includes(w))
  if (witnesses.every(isPrinted)) return reason('agreement.figure-twice', { times: witnesses.length })
  const errors = own.flatMap((w) => detectableError(w, witnesses) ?? [])
  const shows = errors.length === 0 ? null : about(Math.max(...errors))
  const [only] = others
  if (only === undefined) return reason('agreement.among', { shows })
  if (others.length > 1) return reason('agreement.all', { others: others.length, shows })
  return reason('agreement.one', { other: only.evidence.basis, shows })
}

/** The witnesses that a value rests on: a piece that only says again what another says stands for that one. */
function ownWitnesses(
  from: Decision['from'],
  witnesses: Decision['witnesses'],
  duplicates: Decision['duplicates'],
): EvaluatedEvidence[] {
  const meant = new Set(from.map((w) => duplicates.find(({ piece }) => piece === w)?.of ?? w))
  return witnesses.filter((w) => meant.has(w))
}

function beyondLimit({ pairs, from }: Decision, telling: Telling): AnyReason | null {
  const beyond = pairs.filter(isBeyondLimit)
  const worst = beyond.find(({ a, b }) => from.includes(a) || from.includes(b)) ?? beyond[0]
  if (worst === undefined) return null
  const [limit, value] = worst.a.limit === undefined ? [worst.b, worst.a] : [worst.a, worst.b]
  const parts = { limit: telling.told(limit).written, ...apart(value.compared, limit.compared, telling) }
  return from.includes(value)
    ? reason('agreement.beyond-limit', parts)
    : reason('agreement.other-beyond-limit', { ...parts, who: telling.told(value) })
}

function disputed({ from, witnesses, duplicates, odd, basis }: Decision, telling: Telling): AnyReason | null {
  const own = ownWitnesses(from, witnesses, duplicates)
  const { told } = telling
  if (witnesses.length === 2) {
    const [a, b] = witnesses as readonly [EvaluatedEvidence, EvaluatedEvidence]
    const between = apart(a.compared, b.compared, telling)
    const [only] = own
    if (own.length !== 1 || only === undefined || basis === 'mean') {
      return reason('agreement.others-dispute', { one: told(a), other: told(b), ...between })
    }
    return reason('agreement.disputed', { who: told(only === a ? b : a), ...between })
  }
  const [worst] = odd
  if (worst === undefined) return null
  const rest = witnesses.filter((w) => !odd.includes(w))
  const between = apart(worst.compared, meanOfEvidence(rest), telling)
  if (own.length === 1 && own[0] === worst) return reason('agreement.stands-out', between)
  return reason('agreement.odd-ones', { odd: odd.map((w) => told(w)), ...between })
}

/** By how much two values differ, and what would be allowed: E_n is the one over the other; null between exact values. */
function apart(a: Uncertain | null, b: Uncertain | null, { difference, about }: Telling) {
  if (a === null || b === null) return { by: '', allowed: null, en: 0 }
  const U = Math.sqrt(Math.max(0, squaredU(a, b, expand(a), expand(b))))
  return {
    by: difference(Math.abs(a.value - b.value), U),
    allowed: U > 0 ? about(U) : null,
    en: normalisedError(a, b),
  }
}
