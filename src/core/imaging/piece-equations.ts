import { type EdgeResponse, readEdge } from './edge-response.ts'
import type { Strip } from './strip.ts'

/**
 * The stroke's own parameters as one piece knows them: across, turned (per pixel along), logarithm of its width,
 * logarithm of its blur.
 */
export const OWN = 4

/** The least-squares equations of one piece, its own ground and contrast already eliminated. */
export interface PieceEquations {
  /** Grey values from ground to stroke, below 0 for a darker stroke, and its variance for unit noise. */
  contrast: number
  contrastVariance: number
  /** Normal matrix (row by row) and right-hand side for the four parameters, for unit contrast. */
  matrix: Float64Array
  side: Float64Array
  /** Sum of squared residuals. */
  squares: number
  count: number
}

const SIZE = 9
const GROUND = 4

/** What is known of a stroke while it is fitted. */
export interface Guess {
  /** Across the guide in the middle of the piece, pixels, and per pixel along. */
  offset: number
  turn: number
  width: number
  blur: number
}

/**
 * Values of the columns of the model at one pixel: ground, along, across, stroke, and the derivatives of the stroke to
 * its own four parameters.
 * Model: value = g0 + g1·along + g2·across + C·p(across − offset − turn·along), p a box as wide as the stroke seen
 * through the response of an edge.
 */
export function modelColumns(
  edge: EdgeResponse,
  guess: Guess,
  along: number,
  across: number,
  out: Float64Array,
): void {
  const u = across - guess.offset - guess.turn * along
  const half = guess.width / 2
  readEdge(edge, u + half, LEFT)
  readEdge(edge, u - half, RIGHT)
  const spreadLeft = LEFT[1] as number
  const spreadRight = RIGHT[1] as number
  out[0] = 1
  out[1] = along
  out[2] = across
  out[3] = (LEFT[0] as number) - (RIGHT[0] as number)
  out[4] = spreadRight - spreadLeft
  out[5] = (spreadRight - spreadLeft) * along
  out[6] = 0.5 * guess.width * (spreadLeft + spreadRight)
  out[7] = guess.blur * guess.blur * ((LEFT[2] as number) - (RIGHT[2] as number))
}

const LEFT = new Float64Array(3)
const RIGHT = new Float64Array(3)
const COLUMNS = new Float64Array(SIZE)
const SUMS = new Float64Array(SIZE * SIZE)

/** @returns good until the next call; null when the piece has too few pixels to tell its ground from its stroke */
export function pieceEquations(
  strip: Strip,
  piece: number,
  edge: EdgeResponse,
  guess: Guess,
): PieceEquations | null {
  const part = strip.pieces[piece]
  if (part === undefined || part.end - part.first < 12) return null
  const { along, across, value } = strip
  let mean = 0
  for (let i = part.first; i < part.end; i++) mean += value[i] as number
  mean /= part.end - part.first
  SUMS.fill(0)
  for (let i = part.first; i < part.end; i++) {
    modelColumns(edge, guess, along[i] as number, across[i] as number, COLUMNS)
    COLUMNS[8] = (value[i] as number) - mean
    for (let a = 0; a < SIZE; a++) {
      const c = COLUMNS[a] as number
      if (c === 0) continue
      const at = a * SIZE
      for (let b = a; b < SIZE; b++) SUMS[at + b] = (SUMS[at + b] as number) + c * (COLUMNS[b] as number)
    }
  }
  return eliminateGround(part.end - part.first)
}

const LAST: PieceEquations = {
  contrast: 0,
  contrastVariance: 0,
  matrix: new Float64Array(OWN * OWN),
  side: new Float64Array(OWN),
  squares: 0,
  count: 0,
}

/** Gauss's elimination of the ground and the contrast; the rest is left as their Schur complement. */
function eliminateGround(count: number): PieceEquations | null {
  for (let p = 0; p < GROUND; p++) {
    const pivot = SUMS[p * SIZE + p] as number
    if (!(pivot > 1e-6)) return null
    for (let a = p + 1; a < SIZE; a++) {
      const f = (SUMS[p * SIZE + a] as number) / pivot
      if (f === 0) continue
      for (let b = a; b < SIZE; b++) {
        SUMS[a * SIZE + b] = (SUMS[a * SIZE + b] as number) - f * (SUMS[p * SIZE + b] as number)
      }
    }
  }
  const stroke = SUMS[3 * SIZE + 3] as number
  const { matrix, side } = LAST
  for (let a = 0; a < OWN; a++) {
    side[a] = SUMS[(a + GROUND) * SIZE + 8] as number
    for (let b = a; b < OWN; b++) {
      const v = SUMS[(a + GROUND) * SIZE + b + GROUND] as number
      matrix[a * OWN + b] = v
      matrix[b * OWN + a] = v
    }
  }
  LAST.contrast = (SUMS[3 * SIZE + 8] as number) / stroke
  LAST.contrastVariance = 1 / stroke
  LAST.squares = Math.max(SUMS[8 * SIZE + 8] as number, 0)
  LAST.count = count
  return LAST
}
