import { type Mint, mintIds } from '../../core/job/ids/mint-ids.ts'

/** Gives ids by the browser's own randomness. */
export const mint: Mint = mintIds((count) => crypto.getRandomValues(new Uint8Array(count)))

/**
 * Gives the few ids that something needs to be tried and not kept: the same ones at every trial, so that what is tried
 * twice is worked out once.
 */
export function mintForTrial(): Mint {
  let next = 0
  return mintIds((count) => Uint8Array.from({ length: count }, () => next++))
}
