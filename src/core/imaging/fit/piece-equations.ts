import type { Piece, Strip } from '../strip/strip.ts'
import { type EdgeResponse, readEdge } from './edge-response.ts'

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
  /** Across the curve in the middle of the piece, pixels, and per pixel along. */
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
  sumGround(part)
  sumStroke(strip, part, edge, guess)
  return eliminateGround(part.end - part.first)
}

/** The products of ground and grey values do not change while the stroke is fitted. */
function sumGround({ products }: Piece): void {
  const places = [0, 1, 2, SIZE - 1]
  for (let a = 0; a < 4; a++)
    for (let b = a; b < 4; b++)
      SUMS[(places[a] as number) * SIZE + (places[b] as number)] = products[4 * a + b] as number
}

/**
 * The products of the other columns of `modelColumns`: none beyond the edges' reach, only the stroke's own well inside
 * of it. Written out, for most of the time of a search goes by here.
 */
function sumStroke(
  { along, across, value }: Strip,
  { first, end, mean }: Piece,
  edge: EdgeResponse,
  { offset, turn, width, blur }: Guess,
): void {
  const half = width / 2
  const { reach } = edge
  const blur2 = blur * blur
  let [p1, ps, pt, pp, pv, p4, p5, p6, p7] = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  let [d1, ds, dt, dv, dss, dts, dsv] = [0, 0, 0, 0, 0, 0, 0]
  let [w1, ws, wt, wv, b1, bs, bt, bv] = [0, 0, 0, 0, 0, 0, 0, 0]
  let [dd, dds, ddss, dw, dws, db, dbs, ww, wb, bb] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (let i = first; i < end; i++) {
    const s = along[i] as number
    const t = across[i] as number
    const u = t - offset - turn * s
    if (u + half <= -reach || u - half >= reach) continue
    const v = (value[i] as number) - mean
    if (u + half >= reach && u - half <= -reach) {
      p1++
      ps += s
      pt += t
      pp++
      pv += v
      continue
    }
    readEdge(edge, u + half, LEFT)
    readEdge(edge, u - half, RIGHT)
    const p = (LEFT[0] as number) - (RIGHT[0] as number)
    const d = (RIGHT[1] as number) - (LEFT[1] as number)
    const w = half * ((LEFT[1] as number) + (RIGHT[1] as number))
    const b = blur2 * ((LEFT[2] as number) - (RIGHT[2] as number))
    p1 += p
    ps += p * s
    pt += p * t
    pp += p * p
    pv += p * v
    p4 += p * d
    p5 += p * d * s
    p6 += p * w
    p7 += p * b
    d1 += d
    ds += d * s
    dt += d * t
    dv += d * v
    dss += d * s * s
    dts += d * s * t
    dsv += d * s * v
    w1 += w
    ws += w * s
    wt += w * t
    wv += w * v
    b1 += b
    bs += b * s
    bt += b * t
    bv += b * v
    const d2 = d * d
    dd += d2
    dds += d2 * s
    ddss += d2 * s * s
    dw += d * w
    dws += d * w * s
    db += d * b
    dbs += d * b * s
    ww += w * w
    wb += w * b
    bb += b * b
  }
  setColumn(3, p1, ps, pt)
  setColumn(4, d1, ds, dt)
  setColumn(5, ds, dss, dts)
  setColumn(6, w1, ws, wt)
  setColumn(7, b1, bs, bt)
  setRow(3, pp, p4, p5, p6, p7, pv)
  setRow(4, dd, dds, dw, db, dv)
  setRow(5, ddss, dws, dbs, dsv)
  setRow(6, ww, wb, wv)
  setRow(7, bb, bv)
}

/** With the three columns of the ground. */
function setColumn(column: number, even: number, along: number, across: number): void {
  SUMS[column] = even
  SUMS[SIZE + column] = along
  SUMS[2 * SIZE + column] = across
}

/** From the diagonal on. */
function setRow(row: number, ...values: number[]): void {
  for (let i = 0; i < values.length; i++) SUMS[row * SIZE + row + i] = values[i] as number
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
