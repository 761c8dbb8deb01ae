import { createHash } from 'node:crypto'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** Draws by chance, the same for a name every time. */
export interface Chance {
  /** A whole number from `least` to `most`, both among them. */
  whole(least: number, most: number): number
  of<T>(things: readonly T[]): T | undefined
}

export function chanceOf(name: string): Chance {
  // Seeds next to each other begin with draws next to each other; those of a hash do not.
  const generator = xoroshiro128plus(createHash('sha256').update(name).digest().readInt32BE())
  const whole = (least: number, most: number): number => uniformInt(generator, least, most)
  return {
    whole,
    of: (things) => (things.length === 0 ? undefined : things[whole(0, things.length - 1)]),
  }
}

/** A number that a field of so many bytes should not have: nothing, far too much, next to the truth, or anything. */
export function lie(chance: Chance, truth: number, size: 1 | 2 | 4): number {
  const most = 2 ** (8 * size) - 1
  const lies = [0, 1, 2, most, Math.floor(most / 2), truth * 2, truth + 1, truth - 1, truth * 1000, 100_000]
  const told = chance.of([...lies, chance.whole(0, most)]) ?? 0
  return Math.max(0, Math.min(most, Math.floor(told)))
}
