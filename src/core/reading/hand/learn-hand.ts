import type { Hand } from './hand.ts'
import { largestStretch } from './largest-stretch.ts'

/** A glyph of the hand whose name is known. */
export interface NamedGlyph {
  /** Channel of the glyph that it is. */
  readonly glyph: number
  /** Log-likelihoods of all glyphs but for a constant, as they were before anything was known of the hand. */
  readonly logs: Float32Array
  readonly traits: Float32Array
}

/** How much a hand is thought to change the log-likelihood of a glyph, before anything is known: standard deviation. */
const SPREAD = 1.5
/** More make a hand hardly better. Both were chosen on letterings that the examination of hands leaves out. */
const STEPS = 30

/** One name in so many is wrong: a name that stays incredible teaches nothing. */
export const WRONG = 0.02

/** Glyphs less likely than the likeliest by more than this, as a logarithm, have no part in telling it. */
const NO_PART = 7
/** Differences of probability that are not worth a step. */
const NOTHING = 5e-4

/**
 * Learns a hand: the most probable weights of a multinomial logistic regression that goes on from the network's last
 * layer, with a normal prior about no difference at all. Few glyphs change little; without any there is no hand.
 */
export function learnHand(named: readonly NamedGlyph[]): Hand | undefined {
  const [first] = named
  if (first === undefined) return undefined
  const [glyphs, traits] = [first.logs.length, first.traits.length]
  const lessons = named.map(lessonOf)
  const squares = lessons.reduce((sum, { traits: t }) => sum + t.reduce((s, v) => s + v * v, 0), 0)
  if (squares === 0) return undefined
  const variance = (SPREAD ** 2 * named.length) / squares
  // No curvature is larger than half of the traits' largest stretch, and the prior's.
  const rate = 1 / (largestStretch(lessons.map(({ traits: t }) => t)) / 2 + 1 / variance)
  const more = new Float32Array(glyphs * traits)
  const ahead = new Float32Array(more.length)
  const slope = new Float32Array(more.length)
  for (let step = 0; step < STEPS; step++) {
    slope.fill(0)
    for (const lesson of lessons) addSlope(slope, ahead, lesson, glyphs)
    // Nesterov's acceleration: with a bound on the curvature it needs no line search.
    const momentum = step / (step + 3)
    for (let i = 0; i < more.length; i++) {
      const at = ahead[i] ?? 0
      const next = at + rate * ((slope[i] ?? 0) - at / variance)
      ahead[i] = next + momentum * (next - (more[i] ?? 0))
      more[i] = next
    }
  }
  return { more, traits, learnedFrom: named.length }
}

/** A named glyph with those that it could be taken for. */
interface Lesson {
  readonly traits: Float32Array
  /** Channels, that of its name first. */
  readonly glyphs: Int32Array
  readonly logs: Float32Array
  /** Room to work in. */
  readonly shares: Float64Array
}

function lessonOf({ glyph, logs, traits }: NamedGlyph): Lesson {
  const most = logs.reduce((max, v) => Math.max(max, v), Number.NEGATIVE_INFINITY)
  const others = [...logs.keys()].filter((g) => g !== glyph && (logs[g] ?? 0) > most - NO_PART)
  const glyphs = Int32Array.from([glyph, ...others])
  const shares = new Float64Array(glyphs.length)
  return { traits, glyphs, logs: Float32Array.from(glyphs, (g) => (logs[g] ?? 0) - most), shares }
}

/** Adds what one glyph says of where the weights should go. */
function addSlope(slope: Float32Array, more: Float32Array, lesson: Lesson, names: number): void {
  const { traits, glyphs, logs, shares } = lesson
  const count = traits.length
  let total = 0
  for (let j = 0; j < glyphs.length; j++) {
    let sum = logs[j] ?? 0
    const at = (glyphs[j] ?? 0) * count
    for (let i = 0; i < count; i++) sum += (more[at + i] ?? 0) * (traits[i] ?? 0)
    // No sum is so large unless a step went astray, and then it comes back.
    const share = Math.exp(Math.min(sum, 60))
    shares[j] = share
    total += share
  }
  const named = (shares[0] ?? 0) / total
  // Names are wrong now and then, and then any: how surely this one is not.
  const heed = named / (named + WRONG / (1 - WRONG) / names)
  for (let j = 0; j < glyphs.length; j++) {
    const off = heed * ((j === 0 ? 1 : 0) - (shares[j] ?? 0) / total)
    if (Math.abs(off) < NOTHING) continue
    const at = (glyphs[j] ?? 0) * count
    for (let i = 0; i < count; i++) slope[at + i] = (slope[at + i] ?? 0) + off * (traits[i] ?? 0)
  }
}
