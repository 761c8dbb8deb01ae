import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { type Mint, mintIds, type RandomBytes } from '../../../../src/core/job/ids/mint-ids.ts'

/** Bytes by chance that begins at a seed. */
export function seededBytes(seed: number): RandomBytes {
  const random = xoroshiro128plus(seed)
  return (count) => Uint8Array.from({ length: count }, () => random.next() & 0xff)
}

/** Ids by chance that begins at a seed. */
export const seededMint = (seed: number): Mint => mintIds(seededBytes(seed))
