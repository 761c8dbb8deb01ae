import { randomStream } from '../../../../src/core/uncertainty/random.ts'

/** Chance that its seeds settle, in the forms that a draughtsman needs. */
export interface Dice {
  /** 0 ≤ x < 1. */
  uniform(): number
  /** Uniform, from ≤ x < to. */
  between(from: number, to: number): number
  /** A whole number, from ≤ n ≤ to. */
  whole(from: number, to: number): number
  /** Mean 0, variance 1. */
  normal(): number
  /** True in this share of cases. */
  happens(share: number): boolean
  pick<T>(of: readonly T[]): T
}

/** Neighbouring seeds give unlike streams: each is mixed in by a multiplication and shifts, so that all bits move. */
function mixed(seeds: readonly number[]): number {
  let h = 0x9e3779b9
  for (const seed of seeds) {
    h = Math.imul(h ^ seed, 0x85ebca6b)
    h ^= h >>> 13
    h = Math.imul(h, 0xc2b2ae35)
    h ^= h >>> 16
  }
  return h
}

export function dice(...seeds: readonly number[]): Dice {
  const { uniform, normal } = randomStream(mixed(seeds))
  const whole = (from: number, to: number) => from + Math.floor(uniform() * (to - from + 1))
  return {
    uniform,
    normal,
    whole,
    between: (from, to) => from + (to - from) * uniform(),
    happens: (share) => uniform() < share,
    pick: (of) => {
      const picked = of[whole(0, of.length - 1)]
      if (picked === undefined) throw new Error('There is nothing to pick from.')
      return picked
    },
  }
}
