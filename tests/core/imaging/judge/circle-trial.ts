import { circleCase } from '../simulate/circle-case.ts'
import { type Kind, someLook } from '../simulate/look.ts'
import { type CircleOutcomes, judgeCircle } from './judge-circle.ts'
import { allowedFor, many } from './many.ts'
import { type Outcome, type Score, score } from './score.ts'

export interface RoundScores {
  along: Score
  centre: Score
  radius: Score
}

export async function circleTrial(
  kind: Kind,
  cases: number,
  seed: number,
  { whole = true, hidden = 0, radii = [15, 90] as readonly [number, number] } = {},
): Promise<RoundScores> {
  const outcomes = await many(cases, seed, async (r) => {
    const look = someLook(kind, r)
    // A stroke half as wide as its circle is a disc with a hole.
    const narrow = { ...look, width: Math.min(look.width, 0.4 * radii[0]) }
    return judgeCircle(await circleCase(narrow, r, { radii, whole, hidden }))
  })
  const of = (part: keyof CircleOutcomes): Score =>
    score(
      outcomes.map((o): Outcome | null => (o === null ? null : o[part])),
      allowedFor(kind, hidden),
    )
  return { along: of('along'), centre: of('centre'), radius: of('radius') }
}
