import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A stream of random numbers that depends on its seed alone. */
export interface RandomStream {
  /** 0 ≤ x < 1. */
  uniform(): number
  /** Mean 0, variance 1. */
  normal(): number
}

export function randomStream(seed: number): RandomStream {
  const generator = xoroshiro128plus(seed)
  const uniform = (): number => uniformFloat64(generator)
  let spare: number | undefined
  // Box–Muller in its polar form (Marsaglia & Bray 1964).
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    for (;;) {
      const x = 2 * uniform() - 1
      const y = 2 * uniform() - 1
      const q = x * x + y * y
      if (q > 0 && q < 1) {
        const f = Math.sqrt((-2 * Math.log(q)) / q)
        spare = y * f
        return x * f
      }
    }
  }
  return { uniform, normal }
}
