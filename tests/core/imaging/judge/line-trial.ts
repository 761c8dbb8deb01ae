import { lineCase } from '../simulate/line-case.ts'
import { type Kind, someLook } from '../simulate/look.ts'
import { judgeLine } from './judge-line.ts'
import { allowedFor, many } from './many.ts'
import { type Score, score } from './score.ts'

export async function lineTrial(kind: Kind, cases: number, seed: number, hidden = 0): Promise<Score> {
  const outcomes = await many(cases, seed, async (r) =>
    judgeLine(await lineCase(someLook(kind, r), r, hidden)),
  )
  return score(outcomes, allowedFor(kind, hidden))
}
