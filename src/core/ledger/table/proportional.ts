import type { Reaching } from './reach.ts'

/** Sources that move the same rows in one proportion, which no sum of rows can tell apart: they count as one. */
export interface Proportional {
  /** What they are called, each name once. */
  readonly labels: readonly string[]
  /** Of the largest of them. */
  readonly order: number
  /** Root of the sum of squares in each row, with the sign of the largest of them; the first is positive. */
  readonly parts: readonly number[]
}

/** Of a row's u. Rounding alone comes to a tenth of it, and what is not in proportion to a million times as much. */
const IN_PROPORTION = 1e-14

/**
 * Brings sources that contribute to the same rows in one proportion together. Σ of products of any two rows stays as it
 * was to rounding, and so do the squares of any sum of rows.
 * @param sources that move the same rows and rest on one estimate of variance, or on known variances
 * @param u standard uncertainty of each of those rows
 */
export function proportional(sources: readonly Reaching[], u: readonly number[]): Proportional[] {
  const leads: Led[] = []
  for (const one of largestFirst(sources, u)) {
    const led = leads.find((l) => inProportion(l.lead, one.source.parts, u))
    if (led === undefined) leads.push({ lead: one, followers: [one] })
    else led.followers.push(one)
  }
  return leads.map(together)
}

/** A source with the place and the size of its largest share of a row's u. */
interface Sized {
  source: Reaching
  at: number
  size: number
}

interface Led {
  lead: Sized
  /** With the lead itself. */
  followers: Sized[]
}

/** Small ones then follow a lead that is well above rounding. */
const largestFirst = (sources: readonly Reaching[], u: readonly number[]): Sized[] =>
  sources
    .map((source) => sized(source, u))
    .sort((a, b) => b.size - a.size || a.source.source.order - b.source.source.order)

// Elements are read in place in these three: every contribution of every row of every table goes through them.

function sized(source: Reaching, u: readonly number[]): Sized {
  const { parts } = source
  let at = 0
  let size = 0
  for (let i = 0; i < parts.length; i++) {
    const share = Math.abs(parts[i] ?? Number.NaN) / (u[i] ?? Number.NaN)
    if (share > size) {
      at = i
      size = share
    }
  }
  return { source, at, size }
}

function inProportion({ source, at }: Sized, parts: readonly number[], u: readonly number[]): boolean {
  const lead = source.parts
  const k = (parts[at] ?? Number.NaN) / (lead[at] ?? Number.NaN)
  for (let i = 0; i < parts.length; i++) {
    const off = Math.abs((parts[i] ?? Number.NaN) - k * (lead[i] ?? Number.NaN))
    if (!(off <= IN_PROPORTION * (u[i] ?? Number.NaN))) return false
  }
  return true
}

function together({ lead: { source: lead }, followers }: Led): Proportional {
  const labels = new Set<string>()
  const parts = lead.parts.map(() => 0)
  for (const { source } of followers) {
    labels.add(source.source.label)
    for (let i = 0; i < parts.length; i++) {
      parts[i] = (parts[i] ?? Number.NaN) + (source.parts[i] ?? Number.NaN) ** 2
    }
  }
  const sign = Math.sign(lead.parts[0] ?? Number.NaN)
  for (let i = 0; i < parts.length; i++) {
    parts[i] = sign * Math.sign(lead.parts[i] ?? Number.NaN) * Math.sqrt(parts[i] ?? Number.NaN)
  }
  return { labels: [...labels].sort(), order: lead.source.order, parts }
}
