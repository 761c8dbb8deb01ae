import { type Kind, someLook } from '../simulate/look.ts'
import { pointCase } from '../simulate/point-case.ts'
import { judgePoint } from './judge-point.ts'
import { allowedFor, many } from './many.ts'
import { type Score, score } from './score.ts'

export async function pointTrial(kind: Kind, cases: number, seed: number, hidden = 0): Promise<Score> {
  const outcomes = await many(cases, seed, async (r) =>
    judgePoint(await pointCase(someLook(kind, r), r, hidden)),
  )
  return score(outcomes, allowedFor(kind, hidden))
}
