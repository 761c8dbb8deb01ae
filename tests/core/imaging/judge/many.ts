import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { caseStream } from '../simulate/case-stream.ts'
import type { Kind } from '../simulate/look.ts'
import { type Allowed, GREY, ONE_BIT, PARTLY_HIDDEN } from './score.ts'

/** A fifth of the stroke. */
export const HIDDEN = 0.2

export const allowedFor = (kind: Kind, hidden = 0): Allowed =>
  kind === 'one bit' ? ONE_BIT : hidden > 0 ? PARTLY_HIDDEN : GREY

/** Cases that each have a seed of their own, so that any one of them can be drawn again by itself. */
export async function many<T>(
  cases: number,
  seed: number,
  one: (random: RandomStream, i: number) => Promise<T>,
): Promise<T[]> {
  const out: T[] = []
  for (let i = 0; i < cases; i++) out.push(await one(caseStream(seed * 10_000 + i), i))
  return out
}
