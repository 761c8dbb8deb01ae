import { between, type Kind, someLook } from '../simulate/look.ts'
import { pointCase } from '../simulate/point-case.ts'
import { judgeEdge } from './judge-edge.ts'
import { allowedFor, many } from './many.ts'
import { type Score, score } from './score.ts'

/**
 * Both edges: every case gives two outcomes. All are blurred a little: without blur an edge has no shape to be fitted. One
 * bit is cut at a level that nobody knows, as where an edge lies hangs on it.
 */
export async function edgeTrial(kind: Kind, cases: number, seed: number): Promise<Score> {
  const pairs = await many(cases, seed, async (r) => {
    const look = someLook(kind, r)
    const blurred = { ...look, blur: Math.max(look.blur, 0.45) }
    const c = await pointCase(kind === 'one bit' ? { ...blurred, cut: between(r, 0.3, 0.7) } : blurred, r)
    return [judgeEdge(c, 'left'), judgeEdge(c, 'right')]
  })
  return score(pairs.flat(), allowedFor(kind, 0))
}
