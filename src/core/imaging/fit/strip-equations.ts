import type { Strip } from '../strip/strip.ts'
import { type EdgeResponse, edgeResponse } from './edge-response.ts'
import { type Guess, OWN, type PieceEquations, pieceEquations } from './piece-equations.ts'

/** Where the stroke is taken to lie across the curve, by the curve's parameters, and its shape, while it is fitted. */
export interface StrokeGuess {
  parameters: Float64Array
  width: number
  blur: number
}

/** Responses of an edge for each piece: one and the same along a straight curve. */
export function edgesOf({ curve, pieces }: Strip, blur: number): EdgeResponse[] {
  if (curve.curvature !== 0) return edgesRound(curve, pieces, blur)
  const one = edgeResponse(curve.across(0), blur)
  return pieces.map(() => one)
}

/** Directions of a pixel's square that are told apart, over an eighth of a turn. */
const DIRECTIONS = 8

/** Round a curve the response changes slowly, and alike in each eighth of a turn: one serves its neighbours too. */
function edgesRound(curve: Strip['curve'], pieces: Strip['pieces'], blur: number): EdgeResponse[] {
  const shared: EdgeResponse[] = []
  return pieces.map((p) => {
    const [x, y] = curve.across(p.middle)
    const lean = Math.atan2(Math.min(Math.abs(x), Math.abs(y)), Math.max(Math.abs(x), Math.abs(y)))
    const i = Math.round((lean / (Math.PI / 4)) * DIRECTIONS)
    const angle = (i / DIRECTIONS) * (Math.PI / 4)
    shared[i] ??= edgeResponse([Math.cos(angle), Math.sin(angle)], blur)
    return shared[i]
  })
}

/** Offset and turn of the stroke at the middle of a piece. */
export function guessAt(strip: Strip, piece: number, fit: StrokeGuess): Guess {
  const n = strip.curve.parameters
  strip.curve.basis(strip.pieces[piece]?.middle ?? 0, VALUES, SLOPES)
  let offset = 0
  let turn = 0
  for (let j = 0; j < n; j++) {
    offset += (VALUES[j] as number) * (fit.parameters[j] as number)
    turn += (SLOPES[j] as number) * (fit.parameters[j] as number)
  }
  return { offset, turn, width: fit.width, blur: fit.blur }
}

const VALUES = new Float64Array(5)
const SLOPES = new Float64Array(5)

/** The least-squares equations of all kept pieces together. */
export interface Assembled {
  matrix: Float64Array
  side: Float64Array
  squares: number
  count: number
  contrast: number
}

/** @returns null when no kept piece has pixels enough */
export function assemble(strip: Strip, at: StrokeGuess, kept: readonly boolean[]): Assembled | null {
  const n = strip.curve.parameters
  const m = n + 2
  const edges = edgesOf(strip, at.blur)
  const matrix = new Float64Array(m * m)
  const side = new Float64Array(m)
  let squares = 0
  let count = 0
  let contrast = 0
  let pieces = 0
  for (let k = 0; k < strip.pieces.length; k++) {
    const edge = edges[k]
    if (!kept[k] || edge === undefined) continue
    const part = pieceEquations(strip, k, edge, guessAt(strip, k, at))
    if (part === null) continue
    addPiece(part, n, matrix, side)
    squares += part.squares
    count += part.count
    contrast += part.contrast
    pieces++
  }
  return pieces === 0 ? null : { matrix, side, squares, count, contrast: contrast / pieces }
}

/** A piece's four parameters as functions of the common ones, at the basis that `guessAt` has just set. */
function addPiece(part: PieceEquations, n: number, matrix: Float64Array, side: Float64Array): void {
  const m = n + 2
  const C = part.contrast
  const own = (a: number, b: number) => part.matrix[a * OWN + b] as number
  for (let i = 0; i < m; i++) {
    const vi = i < n ? (VALUES[i] as number) : 0
    const si = i < n ? (SLOPES[i] as number) : 0
    const ri =
      i < n ? vi * (part.side[0] as number) + si * (part.side[1] as number) : (part.side[i - n + 2] as number)
    side[i] = (side[i] as number) + C * ri
    for (let j = i; j < m; j++) {
      let h: number
      if (j < n) {
        const vj = VALUES[j] as number
        const sj = SLOPES[j] as number
        h = vi * vj * own(0, 0) + (vi * sj + si * vj) * own(0, 1) + si * sj * own(1, 1)
      } else if (i < n) h = vi * own(0, j - n + 2) + si * own(1, j - n + 2)
      else h = own(i - n + 2, j - n + 2)
      matrix[i * m + j] = (matrix[i * m + j] as number) + C * C * h
      if (i !== j) matrix[j * m + i] = matrix[i * m + j] as number
    }
  }
}
