import { dirichletShare } from './bilevel-edge.ts'

const HARMONICS = 6
/** Least squares follow first moments by so much, on the average over strokes 1.5 to 5 px wide and blurs of 0.4 to 1.6 px. */
const FOLLOWED = 0.75

/**
 * Variance of the middle of a straight stroke by where its edges lie within pixels, pixels² (Type B, GUM 4.3). A pixel tells
 * how much of it is covered, not which part: an edge through one is told (φ − φ²)/2 off, in first moments, where nothing
 * blurred it before. Blur of the scan afterwards does not mend that, and no scan tells which was first. Along a stroke that
 * leans it evens out, as at one bit; along a level one it does not.
 * Fourier series of φ − φ²: Σ cos(2πkφ)/(π²k²), by both edges, over the width.
 * @param length along the stroke, pixels; across: unit vector across it
 */
export function pixelPhaseVariance(width: number, length: number, across: readonly [number, number]): number {
  const major = Math.max(Math.abs(across[0]), Math.abs(across[1]))
  const slope = Math.min(Math.abs(across[0]), Math.abs(across[1])) / major
  const rows = Math.max(1, length * major)
  let sum = 0
  for (let k = 1; k <= HARMONICS; k++) sum += dirichletShare(rows, k * slope) / (8 * Math.PI ** 4 * k ** 4)
  return (2 * sum * (FOLLOWED * major) ** 2) / Math.max(width, 1) ** 2
}
