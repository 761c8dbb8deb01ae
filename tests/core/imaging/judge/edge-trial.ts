import { type Kind, someLook } from '../simulate/look.ts'
import { pointCase } from '../simulate/point-case.ts'
import { judgeEdge } from './judge-edge.ts'
import { allowedFor, many } from './many.ts'
import { type Score, score } from './score.ts'

/** Both edges: every case gives two outcomes. All are blurred a little: without blur an edge has no shape to be fitted. */
export async function edgeTrial(kind: Kind, cases: number, seed: number): Promise<Score> {
  const pairs = await many(cases, seed, async (r) => {
    const look = someLook(kind, r)
    const c = await pointCase({ ...look, blur: Math.max(look.blur, 0.45) }, r)
    return [judgeEdge(c, 'left'), judgeEdge(c, 'right')]
  })
  return score(pairs.flat(), allowedFor(kind, 0))
}
