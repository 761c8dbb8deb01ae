import type { Hand } from './hand.ts'
import { learnHand, type NamedGlyph, WRONG } from './learn-hand.ts'

/** Figures are dealt out to so many parts at most, and each part is once what was not learned from. */
const PARTS = 4
/** How much of what was learned is used. */
const SHARES = [1, 0.5]

/**
 * The hand of some figures, or none: no more of it than makes those figures likelier that it was not learned from.
 * @param figures the named glyphs of each figure
 */
export function handOfFigures(figures: readonly (readonly NamedGlyph[])[]): Hand | undefined {
  const telling = figures.filter((glyphs) => glyphs.length > 0)
  const parts = Math.min(PARTS, telling.length)
  if (parts < 2) return undefined
  const gains = SHARES.map(() => 0)
  for (let part = 0; part < parts; part++) {
    const hand = learnHand(telling.filter((_, i) => i % parts !== part).flat())
    if (hand === undefined) continue
    for (const glyph of telling.filter((_, i) => i % parts === part).flat())
      for (const [i, gain] of gainsBy(hand, glyph).entries()) gains[i] = (gains[i] ?? 0) + gain
  }
  const gain = Math.max(...gains)
  const hand = gain > 0 ? learnHand(telling.flat()) : undefined
  if (hand === undefined) return undefined
  const share = SHARES[gains.indexOf(gain)] ?? 0
  return { ...hand, more: hand.more.map((v) => v * share) }
}

/** By how much each share of a hand makes a glyph's name likelier, as a logarithm. */
function gainsBy({ more }: Hand, { glyph, logs, traits }: NamedGlyph): number[] {
  const added = logs.map((_, g) => {
    let sum = 0
    for (let i = 0, at = g * traits.length; i < traits.length; i++, at++)
      sum += (more[at] ?? 0) * (traits[i] ?? 0)
    return sum
  })
  const before = credit(logs, glyph)
  return SHARES.map(
    (share) =>
      credit(
        logs.map((log, g) => log + share * (added[g] ?? 0)),
        glyph,
      ) - before,
  )
}

/** Logarithm of the probability of a name, which is wrong now and then. */
function credit(logs: Float32Array, glyph: number): number {
  const most = logs.reduce((max, v) => Math.max(max, v), Number.NEGATIVE_INFINITY)
  const total = logs.reduce((sum, v) => sum + Math.exp(v - most), 0)
  return Math.log(((1 - WRONG) * Math.exp((logs[glyph] ?? 0) - most)) / total + WRONG / logs.length)
}
