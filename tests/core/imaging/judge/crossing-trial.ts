import { crossingCase, type Meeting } from '../simulate/crossing-case.ts'
import { type Kind, someLook } from '../simulate/look.ts'
import { judgeCrossing } from './judge-crossing.ts'
import { allowedFor, many } from './many.ts'
import { type Score, score } from './score.ts'

export async function crossingTrial(
  kind: Kind,
  cases: number,
  seed: number,
  meetings: readonly Meeting[] = ['X', 'T', 'L'],
): Promise<Score> {
  const outcomes = await many(cases, seed, async (r, i) =>
    judgeCrossing(await crossingCase(someLook(kind, r), r, meetings[i % meetings.length] ?? 'X')),
  )
  return score(outcomes, allowedFor(kind, 0))
}
