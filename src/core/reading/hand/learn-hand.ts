import type { Hand } from './hand.ts'

/** A glyph of the hand whose name is known. */
export interface NamedGlyph {
  /** Channel of the glyph that it is. */
  readonly glyph: number
  /** Log-likelihoods of all glyphs, as the network gave them. */
  readonly logs: Float32Array
  readonly traits: Float32Array
}

/** How little a hand is thought to differ before anything is known of it: what a trait may add has this variance. */
const VARIANCE = 0.002
const STEPS = 60

/**
 * Learns a hand: the most probable weights of a multinomial logistic regression that goes on from the network's last
 * layer, with a normal prior about no difference at all. Few glyphs change little; without any there is no hand.
 */
export function learnHand(named: readonly NamedGlyph[]): Hand | undefined {
  const [first] = named
  if (first === undefined) return undefined
  const [glyphs, traits] = [first.logs.length, first.traits.length]
  const more = new Float32Array(glyphs * traits)
  const momentum = new Float32Array(more.length)
  // The largest curvature there can be (a quarter of the sum of squared traits, and the prior's) bounds the step.
  const squares = named.reduce((sum, { traits: t }) => sum + t.reduce((s, v) => s + v * v, 0), 0)
  const rate = 1 / (squares / 2 + 1 / VARIANCE)
  for (let step = 0; step < STEPS; step++) {
    const slope = new Float32Array(more.length)
    for (const glyph of named) addSlope(slope, more, glyph)
    // Nesterov's acceleration: with a bound on the curvature it needs no line search.
    for (let i = 0; i < more.length; i++) {
      const down = (slope[i] ?? 0) - (more[i] ?? 0) / VARIANCE
      momentum[i] = 0.8 * (momentum[i] ?? 0) + rate * down
      more[i] = (more[i] ?? 0) + (momentum[i] ?? 0)
    }
  }
  return { more, traits, learnedFrom: named.length }
}

function addSlope(slope: Float32Array, more: Float32Array, { glyph, logs, traits }: NamedGlyph): void {
  const count = traits.length
  const scores = logs.map((log, g) => {
    let sum = log
    for (let i = 0; i < count; i++) sum += (more[g * count + i] ?? 0) * (traits[i] ?? 0)
    return sum
  })
  const most = Math.max(...scores)
  const shares = scores.map((v) => Math.exp(v - most))
  const total = shares.reduce((sum, v) => sum + v, 0)
  for (let g = 0; g < shares.length; g++) {
    const off = (g === glyph ? 1 : 0) - (shares[g] ?? 0) / total
    if (Math.abs(off) < 1e-6) continue
    for (let i = 0; i < count; i++)
      slope[g * count + i] = (slope[g * count + i] ?? 0) + off * (traits[i] ?? 0)
  }
}
