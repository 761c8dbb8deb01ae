import type { MarkedAnswer } from './score-reader.ts'

/** Bands of a tenth, and narrower ones where a reader is nearly sure. */
const EDGES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.995, 1] as const

/** Answers of about the same stated probability. */
export interface ReliabilityBand {
  readonly from: number
  readonly to: number
  readonly answers: number
  /** Mean of what was stated, and share that was right. */
  readonly stated: number
  readonly right: number
}

/** What a reader says of its sureness against how often it is right, of all answers that name a figure. */
export function reliability(answers: readonly Pick<MarkedAnswer, 'answer' | 'right'>[]): {
  readonly bands: readonly ReliabilityBand[]
  /** Expected calibration error: mean distance of stated from right over the bands, weighed by their answers. */
  readonly ece: number
} {
  const named = answers.filter(({ answer }) => answer.text !== null)
  const bands: ReliabilityBand[] = []
  for (let i = 0; i + 1 < EDGES.length; i++) {
    const [from, to] = [EDGES[i] ?? 0, EDGES[i + 1] ?? 1]
    const last = i + 2 === EDGES.length
    const inside = named.filter(
      ({ answer: { probability: p } }) => p >= from && (p < to || (last && p <= to)),
    )
    if (inside.length === 0) continue
    const stated = inside.reduce((sum, { answer }) => sum + answer.probability, 0) / inside.length
    const right = inside.filter((a) => a.right).length / inside.length
    bands.push({ from, to, answers: inside.length, stated, right })
  }
  const off = bands.reduce((sum, b) => sum + b.answers * Math.abs(b.stated - b.right), 0)
  return { bands, ece: named.length === 0 ? 0 : off / named.length }
}
