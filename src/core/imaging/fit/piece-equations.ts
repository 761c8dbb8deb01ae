import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Piece, Strip } from '../strip/strip.ts'
import type { EdgeResponse } from './edge-response.ts'
import { type Guess, StrokeModel } from './stroke-model.ts'

const { f64 } = elements

/**
 * The stroke's own parameters as one piece knows them: across, turned (per pixel along), logarithm of its width,
 * logarithm of its blur.
 */
export const OWN = 4

/** Columns of the equations: three of the ground (even, along, across), the contrast, the shape's own four, grey values. */
const [ALONG, ACROSS, CONTRAST, SHAPE, VALUE, SIZE] = [1, 2, 3, 4, 8, 9] as const
const [PLACE, TURN, WIDTH, BLUR] = [SHAPE, SHAPE + 1, SHAPE + 2, SHAPE + 3] as const
/** Where the columns of a piece's own products stand in the equations. */
const OF_GROUND = [0, ALONG, ACROSS, VALUE] as const
const FEWEST_PIXELS = 12

/** Numbers kept of a pixel that the edges reach: along, across, grey value, and the stroke with its derivatives. */
const KEPT = 7

/**
 * The least-squares equations of one piece, its own ground and contrast already eliminated. One object serves many pieces,
 * one after the other: what it tells is that of the last one solved.
 */
export class PieceEquations {
  /** Grey values from ground to stroke, below 0 for a darker stroke, and its variance for unit noise. */
  contrast = 0
  contrastVariance = 0
  /** Normal matrix (row by row) and right-hand side for the four parameters, for unit contrast. */
  readonly matrix = new Float64Array(OWN * OWN)
  readonly side = new Float64Array(OWN)
  /** Sum of squared residuals. */
  squares = 0
  count = 0

  /** Upper triangle, row by row. */
  readonly #sums = new Float64Array(SIZE * SIZE)
  readonly #model = new StrokeModel()
  #pixels = new Float64Array(0)
  /** How much of it is filled. */
  #filled = 0

  /** @returns whether the piece has pixels enough to tell its ground from its stroke */
  solve(strip: Strip, piece: Piece, edge: EdgeResponse, guess: Guess): boolean {
    const count = piece.end - piece.first
    if (count < FEWEST_PIXELS) return false
    this.#sumGround(piece)
    this.#sumContrast(strip, piece, edge, guess)
    this.#sumShapeByGround()
    this.#sumShape()
    this.count = count
    return this.#eliminateGround()
  }

  /** Ground by ground and grey values: they do not change while the stroke is fitted. */
  #sumGround({ products }: Piece): void {
    OF_GROUND.forEach((row, a) => {
      for (let b = a; b < OF_GROUND.length; b++)
        this.#sums[row * SIZE + (OF_GROUND[b] ?? VALUE)] = f64(products, OF_GROUND.length * a + b)
    })
  }

  /**
   * Contrast by ground, itself and grey values. Nothing adds beyond the edges' reach, and only the stroke itself well inside
   * of it; the other pixels are kept for the shape.
   */
  #sumContrast(strip: Strip, { first, end, mean }: Piece, edge: EdgeResponse, guess: Guess): void {
    const { along, across, value } = strip
    const { offset, turn, width } = guess
    const { reach } = edge
    const half = width / 2
    const model = this.#model
    const pixels = this.#roomFor(end - first)
    let filled = 0
    let one = 0
    let bySelf = 0
    let byAlong = 0
    let byAcross = 0
    let byValue = 0
    for (let i = first; i < end; i++) {
      const s = f64(along, i)
      const t = f64(across, i)
      const u = t - offset - turn * s
      if (u + half <= -reach || u - half >= reach) continue
      const v = f64(value, i) - mean
      let p = 1
      if (u + half < reach || u - half > -reach) {
        model.read(edge, u, guess)
        p = model.stroke
        pixels[filled] = s
        pixels[filled + 1] = t
        pixels[filled + 2] = v
        pixels[filled + 3] = p
        pixels[filled + 4] = model.place
        pixels[filled + 5] = model.width
        pixels[filled + 6] = model.blur
        filled += KEPT
      }
      one += p
      byAlong += p * s
      byAcross += p * t
      bySelf += p * p
      byValue += p * v
    }
    this.#filled = filled
    this.#setColumn(CONTRAST, one, byAlong, byAcross)
    this.#sums[CONTRAST * SIZE + CONTRAST] = bySelf
    this.#sums[CONTRAST * SIZE + VALUE] = byValue
  }

  #roomFor(count: number): Float64Array {
    if (this.#pixels.length < count * KEPT) this.#pixels = new Float64Array(count * KEPT)
    return this.#pixels
  }

  /** Shape by ground. */
  #sumShapeByGround(): void {
    const pixels = this.#pixels
    const filled = this.#filled
    let d1 = 0
    let ds = 0
    let dt = 0
    let dss = 0
    let dts = 0
    let w1 = 0
    let ws = 0
    let wt = 0
    let b1 = 0
    let bs = 0
    let bt = 0
    for (let i = 0; i < filled; i += KEPT) {
      const s = f64(pixels, i)
      const t = f64(pixels, i + 1)
      const d = f64(pixels, i + 4)
      const w = f64(pixels, i + 5)
      const b = f64(pixels, i + 6)
      d1 += d
      ds += d * s
      dt += d * t
      dss += d * s * s
      dts += d * s * t
      w1 += w
      ws += w * s
      wt += w * t
      b1 += b
      bs += b * s
      bt += b * t
    }
    this.#setColumn(PLACE, d1, ds, dt)
    this.#setColumn(TURN, ds, dss, dts)
    this.#setColumn(WIDTH, w1, ws, wt)
    this.#setColumn(BLUR, b1, bs, bt)
  }

  /** Shape by contrast, by itself and by grey values. */
  #sumShape(): void {
    const pixels = this.#pixels
    const filled = this.#filled
    let pd = 0
    let pds = 0
    let pw = 0
    let pb = 0
    let dv = 0
    let dsv = 0
    let wv = 0
    let bv = 0
    let dd = 0
    let dds = 0
    let ddss = 0
    let dw = 0
    let dws = 0
    let db = 0
    let dbs = 0
    let ww = 0
    let wb = 0
    let bb = 0
    for (let i = 0; i < filled; i += KEPT) {
      const s = f64(pixels, i)
      const v = f64(pixels, i + 2)
      const p = f64(pixels, i + 3)
      const d = f64(pixels, i + 4)
      const w = f64(pixels, i + 5)
      const b = f64(pixels, i + 6)
      pd += p * d
      pds += p * d * s
      pw += p * w
      pb += p * b
      dv += d * v
      dsv += d * s * v
      wv += w * v
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
    const sums = this.#sums
    sums[CONTRAST * SIZE + PLACE] = pd
    sums[CONTRAST * SIZE + TURN] = pds
    sums[CONTRAST * SIZE + WIDTH] = pw
    sums[CONTRAST * SIZE + BLUR] = pb
    sums[PLACE * SIZE + PLACE] = dd
    sums[PLACE * SIZE + TURN] = dds
    sums[PLACE * SIZE + WIDTH] = dw
    sums[PLACE * SIZE + BLUR] = db
    sums[PLACE * SIZE + VALUE] = dv
    sums[TURN * SIZE + TURN] = ddss
    sums[TURN * SIZE + WIDTH] = dws
    sums[TURN * SIZE + BLUR] = dbs
    sums[TURN * SIZE + VALUE] = dsv
    sums[WIDTH * SIZE + WIDTH] = ww
    sums[WIDTH * SIZE + BLUR] = wb
    sums[WIDTH * SIZE + VALUE] = wv
    sums[BLUR * SIZE + BLUR] = bb
    sums[BLUR * SIZE + VALUE] = bv
  }

  /** A column by the three of the ground. */
  #setColumn(column: number, even: number, along: number, across: number): void {
    this.#sums[column] = even
    this.#sums[ALONG * SIZE + column] = along
    this.#sums[ACROSS * SIZE + column] = across
  }

  /** Gauss's elimination of the ground and the contrast; the rest is left as their Schur complement. */
  #eliminateGround(): boolean {
    const sums = this.#sums
    for (let p = 0; p < SHAPE; p++) {
      const pivot = f64(sums, p * SIZE + p)
      if (!(pivot > 1e-6)) return false
      for (let a = p + 1; a < SIZE; a++) {
        const f = f64(sums, p * SIZE + a) / pivot
        if (f === 0) continue
        for (let b = a; b < SIZE; b++)
          sums[a * SIZE + b] = f64(sums, a * SIZE + b) - f * f64(sums, p * SIZE + b)
      }
    }
    for (let a = 0; a < OWN; a++) {
      this.side[a] = f64(sums, (a + SHAPE) * SIZE + VALUE)
      for (let b = a; b < OWN; b++) {
        const v = f64(sums, (a + SHAPE) * SIZE + b + SHAPE)
        this.matrix[a * OWN + b] = v
        this.matrix[b * OWN + a] = v
      }
    }
    const stroke = f64(sums, CONTRAST * SIZE + CONTRAST)
    this.contrast = f64(sums, CONTRAST * SIZE + VALUE) / stroke
    this.contrastVariance = 1 / stroke
    this.squares = Math.max(f64(sums, VALUE * SIZE + VALUE), 0)
    return true
  }
}
