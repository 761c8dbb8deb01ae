import { edgeResponse, readEdge } from '../fit/edge-response.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { alignedProfile } from '../strip/aligned-profile.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import type { Section } from './stroke-types.ts'

/** The cross profile of what was kept, averaged along the stroke, with the fitted one. @param shift of the reading, pixels */
export function sectionOf({ strip, fit, judged }: Traced, shift: number): Section {
  const half = fit.width / 2 + 7
  const ways = strip.pieces.map((_, k) => (judged.kept[k] ? guessAt(strip, k, fit) : null))
  const { low, value } = alignedProfile(strip, ways, half)
  const edge = edgeResponse(strip.curve.across(strip.curve.length / 2), fit.blur)
  const columns: [at: number, seen: number, shape: number][] = []
  const out = new Float64Array(3)
  value.forEach((seen, i) => {
    if (Number.isNaN(seen)) return
    const at = low + i / 2
    readEdge(edge, at + fit.width / 2, out)
    const left = out[0] as number
    readEdge(edge, at - fit.width / 2, out)
    columns.push([at, seen, left - (out[0] as number)])
  })
  const [a, b, c] = groundAndContrast(columns)
  return {
    at: columns.map(([at]) => at - shift),
    seen: columns.map(([, seen]) => seen),
    fitted: columns.map(([at, , shape]) => a + b * at + c * shape),
  }
}

/** Least squares of seen = a + b·at + c·shape. */
function groundAndContrast(columns: readonly [number, number, number][]): [number, number, number] {
  const m = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (const [at, seen, shape] of columns) {
    const row = [1, at, shape, seen]
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 4; j++)
        m[i * 4 + j] = (m[i * 4 + j] as number) + (row[i] as number) * (row[j] as number)
  }
  for (let p = 0; p < 3; p++) {
    const pivot = m[p * 5] as number
    if (!(Math.abs(pivot) > 1e-9)) return [0, 0, 0]
    for (let i = 0; i < 3; i++) {
      if (i === p) continue
      const f = (m[i * 4 + p] as number) / pivot
      for (let j = p; j < 4; j++) m[i * 4 + j] = (m[i * 4 + j] as number) - f * (m[p * 4 + j] as number)
    }
  }
  return [0, 1, 2].map((i) => (m[i * 4 + 3] as number) / (m[i * 5] as number)) as [number, number, number]
}
