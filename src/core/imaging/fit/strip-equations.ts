import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { CurveBasis } from '../strip/reference-curve.ts'
import type { Piece, Strip } from '../strip/strip.ts'
import { type EdgeResponse, edgeResponse, type ResponseOfEdge } from './edge-response.ts'
import { OWN, PieceEquations } from './piece-equations.ts'
import type { Guess } from './stroke-model.ts'

const { f64 } = elements

/** Where the stroke is taken to lie across the curve, by the curve's parameters, and its shape, while it is fitted. */
export interface StrokeGuess {
  parameters: Float64Array
  width: number
  blur: number
}

/** Responses of an edge for each piece: one and the same along a straight curve. */
export function edgesOf(
  { curve, pieces }: Strip,
  blur: number,
  response: ResponseOfEdge = edgeResponse,
): EdgeResponse[] {
  if (curve.curvature !== 0) return edgesRound(curve, pieces, blur, response)
  const one = response(curve.across(0), blur)
  return pieces.map(() => one)
}

/** Directions of a pixel's square that are told apart, over an eighth of a turn. */
const DIRECTIONS = 8

/** Round a curve the response changes slowly, and alike in each eighth of a turn: one serves its neighbours too. */
function edgesRound(
  curve: Strip['curve'],
  pieces: Strip['pieces'],
  blur: number,
  response: ResponseOfEdge,
): EdgeResponse[] {
  const shared: EdgeResponse[] = []
  return pieces.map((p) => {
    const [x, y] = curve.across(p.middle)
    const lean = Math.atan2(Math.min(Math.abs(x), Math.abs(y)), Math.max(Math.abs(x), Math.abs(y)))
    const i = Math.round((lean / (Math.PI / 4)) * DIRECTIONS)
    const angle = (i / DIRECTIONS) * (Math.PI / 4)
    shared[i] ??= response([Math.cos(angle), Math.sin(angle)], blur)
    return shared[i]
  })
}

/** Offset and turn of the stroke at the middle of a piece. */
export function guessAt({ basis }: Piece, fit: StrokeGuess): Guess {
  let offset = 0
  let turn = 0
  for (let j = 0; j < basis.values.length; j++) {
    const by = f64(fit.parameters, j)
    offset += f64(basis.values, j) * by
    turn += f64(basis.slopes, j) * by
  }
  return { offset, turn, width: fit.width, blur: fit.blur }
}

/** The least-squares equations of all kept pieces together. */
export interface Assembled {
  matrix: Float64Array
  side: Float64Array
  squares: number
  count: number
  contrast: number
}

/** @returns null when no kept piece has pixels enough */
export function assemble(
  strip: Strip,
  at: StrokeGuess,
  kept: readonly boolean[],
  equations = new PieceEquations(),
  response: ResponseOfEdge = edgeResponse,
): Assembled | null {
  const m = strip.curve.parameters + 2
  const edges = edgesOf(strip, at.blur, response)
  const matrix = new Float64Array(m * m)
  const side = new Float64Array(m)
  let squares = 0
  let count = 0
  let contrast = 0
  let pieces = 0
  for (const [k, piece] of strip.pieces.entries()) {
    const edge = edges[k]
    if (!kept[k] || edge === undefined) continue
    if (!equations.solve(strip, piece, edge, guessAt(piece, at))) continue
    addPiece(equations, piece.basis, matrix, side)
    squares += equations.squares
    count += equations.count
    contrast += equations.contrast
    pieces++
  }
  return pieces === 0 ? null : { matrix, side, squares, count, contrast: contrast / pieces }
}

/** A piece's four parameters as functions of the common ones. */
function addPiece(
  { contrast, matrix: own, side: ownSide }: PieceEquations,
  { values, slopes }: CurveBasis,
  matrix: Float64Array,
  side: Float64Array,
): void {
  const n = values.length
  const m = n + 2
  for (let i = 0; i < m; i++) {
    const vi = i < n ? f64(values, i) : 0
    const si = i < n ? f64(slopes, i) : 0
    const ri = i < n ? vi * f64(ownSide, 0) + si * f64(ownSide, 1) : f64(ownSide, i - n + 2)
    side[i] = f64(side, i) + contrast * ri
    for (let j = i; j < m; j++) {
      let h: number
      if (j < n) {
        const vj = f64(values, j)
        const sj = f64(slopes, j)
        h = vi * vj * f64(own, 0) + (vi * sj + si * vj) * f64(own, 1) + si * sj * f64(own, OWN + 1)
      } else if (i < n) h = vi * f64(own, j - n + 2) + si * f64(own, OWN + j - n + 2)
      else h = f64(own, (i - n + 2) * OWN + j - n + 2)
      matrix[i * m + j] = f64(matrix, i * m + j) + contrast * contrast * h
      if (i !== j) matrix[j * m + i] = f64(matrix, i * m + j)
    }
  }
}
