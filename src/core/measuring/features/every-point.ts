import { newSource, type VarianceEstimate } from '../../uncertainty/source.ts'
import type { Move } from './feature.ts'

/** Points that are each uncertain by sigma (pixels) in x and in y, independent of one another. */
export function everyPoint(n: number, sigma: number, label: string, estimate: VarianceEstimate): Move[] {
  const moves: Move[] = []
  for (let point = 0; point < n; point++) {
    moves.push({ source: newSource(label, estimate), point, dx: sigma, dy: 0 })
    moves.push({ source: newSource(label, estimate), point, dx: 0, dy: sigma })
  }
  return moves
}
