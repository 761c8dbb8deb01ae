import type { Decision } from './adopt.ts'
import type { Weighed } from './weighed.ts'

/**
 * Says in a sentence or two why the adopted value is what it is and how the rest agrees with it.
 * @param writtenOf shop notation of a piece of evidence
 */
export function whyAdopted(
  decision: Decision,
  weighed: readonly Weighed[],
  writtenOf: (w: Weighed) => string,
): string {
  if (decision.adopted === null) return decision.open ?? 'There is no usable evidence.'
  const parts = [`${lead(decision)}${standing(decision, writtenOf)}.`]
  const doubtful = weighed.filter(
    (w) =>
      w.compared !== null && !w.usable && !decision.from.includes(w) && w.evidence.withdrawn === undefined,
  )
  if (doubtful.length > 0) parts.push('A printed figure that is hard to read was not counted.')
  return parts.join(' ')
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

function standing({ status, pairs, from }: Decision, writtenOf: (w: Weighed) => string): string {
  if (status === 'single') return '; nothing else checks it'
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
  from: readonly Weighed[],
  worst: Decision['pairs'][number],
): string {
  if (pairs.length > 1) return 'all other evidence agrees'
  const { basis } = otherOf(worst, from).evidence
  return basis === 'printed' && from[0]?.evidence.basis === 'printed'
    ? 'it stands on the sheet twice alike'
    : `the ${basis} value agrees`
}

const otherOf = (pair: Decision['pairs'][number], from: readonly Weighed[]): Weighed =>
  from.includes(pair.a) ? pair.b : pair.a

const rank = (pair: Decision['pairs'][number], from: readonly Weighed[]): number =>
  pair.en + (pair.en > 1 && from.includes(pair.a) !== from.includes(pair.b) ? 1000 : 0)

const enText = (en: number): string => (en >= 100 ? 'over 100' : en.toFixed(1))
