import { leastSquares } from '../../linear-algebra/linear-least-squares.ts'
import { edgeReading, edgeResponse, readEdge } from '../fit/edge-response.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { alignedProfile } from '../strip/aligned-profile.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import type { Section } from './stroke-types.ts'

/** The cross profile of what was kept, averaged along the stroke, with the fitted one. @param shift of the reading, pixels */
export function meanSection({ strip, fit, judged }: Traced, shift: number): Section {
  const half = fit.width / 2 + 7
  const ways = strip.pieces.map((piece, k) => (judged.kept[k] ? guessAt(piece, fit) : null))
  const { low, value } = alignedProfile(strip, ways, half)
  const edge = edgeResponse(strip.curve.across(strip.curve.length / 2), fit.blur)
  const columns: [at: number, seen: number, shape: number][] = []
  const [left, right] = [edgeReading(), edgeReading()]
  value.forEach((seen, i) => {
    if (Number.isNaN(seen)) return
    const at = low + i / 2
    readEdge(edge, at + fit.width / 2, left)
    readEdge(edge, at - fit.width / 2, right)
    columns.push([at, seen, left.step - right.step])
  })
  const fitted = leastSquares(
    columns.map(([at, seen, shape]) => [seen, [1, at, shape]] as const),
    3,
  )
  const [ground = 0, slope = 0, contrast = 0] = fitted?.solution ?? []
  return {
    at: columns.map(([at]) => at - shift),
    seen: columns.map(([, seen]) => seen),
    fitted: columns.map(([at, , shape]) => ground + slope * at + contrast * shape),
  }
}
