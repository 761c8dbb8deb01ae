import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A stream of random numbers that a seed and a purpose settle between them. */
export interface Chance {
  /** Uniform on [0, 1). */
  uniform(): number
  /** Uniform on [from, to). */
  between(from: number, to: number): number
  /** Normal with mean 0 and standard deviation 1 (Box & Muller 1958). */
  normal(): number
}

/**
 * One of the independent streams of a seed. Streams are 2^64 draws apart, so that more draws for one purpose
 * never change what another purpose gets.
 * @param stream 0, 1, 2, …
 */
export function chance(seed: number, stream: number): Chance {
  const generator = xoroshiro128plus(seed)
  for (let i = 0; i < stream; i++) generator.jump()
  const uniform = () => uniformFloat64(generator)
  return {
    uniform,
    between: (from, to) => from + (to - from) * uniform(),
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  }
}

export const STREAM = { draughting: 0, picking: 1, original: 2, hand: 3, paper: 4 } as const
