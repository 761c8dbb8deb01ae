import { howOften } from './how-often.ts'

/** Below this probability figured sizes are taken not to agree. */
const DOUBTED = 0.05

/** Whether the figured sizes of a view agree, or that nothing tells: goes on from "its figured sizes". */
export const agreementInShort = (p: number | null): string =>
  p === null
    ? 'have nothing to check them'
    : p >= DOUBTED
      ? 'agree as well as picks can tell'
      : 'do not agree'

/**
 * How well the figured sizes of a view agree with one another, for somebody who cuts metal.
 * @param p probability that good sizes would differ as much by chance; null where nothing checks them
 * @param some whether it is of the rest only, without one that was set aside
 */
export function knownSizesAgree(p: number | null, some = false): string {
  if (p === null) return 'Nothing checks these sizes yet: one more figured size would.'
  return `The ${some ? 'rest of the ' : ''}figured sizes ${agreementInShort(p)}: good sizes would differ this much ${howOften(p)}.`
}
