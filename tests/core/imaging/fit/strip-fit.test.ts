import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { edgeResponse } from '../../../../src/core/imaging/fit/edge-response.ts'
import { pieceCentres } from '../../../../src/core/imaging/fit/piece-centres.ts'
import { OWN, PieceEquations } from '../../../../src/core/imaging/fit/piece-equations.ts'
import { guessAt } from '../../../../src/core/imaging/fit/strip-equations.ts'
import { fitStrip } from '../../../../src/core/imaging/fit/strip-fit.ts'
import {
  type ReferenceCurve,
  roundCurve,
  straightCurve,
} from '../../../../src/core/imaging/strip/reference-curve.ts'
import { stripAlong } from '../../../../src/core/imaging/strip/strip.ts'
import { type Look, PLAIN_LOOK } from '../simulate/look.ts'
import { cleanPicture } from '../simulate/scan-of.ts'
import { bar, ring, type Shape } from '../simulate/shapes.ts'

const LOOK: Look = { ...PLAIN_LOOK, blur: 0.8, slope: [0.1, -0.2] }
const DIRECTION = 0.4
const at = (s: number, across = 0) =>
  pixel(
    40 + s * Math.cos(DIRECTION) - across * Math.sin(DIRECTION),
    40 + s * Math.sin(DIRECTION) + across * Math.cos(DIRECTION),
  )

function stripOf(shape: Shape, curve: ReferenceCurve, count = 8) {
  const { width, height, data } = cleanPicture({ width: 80, height: 80, strokes: [shape] }, LOOK)
  return stripAlong({ left: 0, top: 0, width, height, data: Float32Array.from(data) }, curve, count, -8, 8)
}

describe('a strip fitted where there is no noise', () => {
  it('finds a straight stroke, its width, blur and contrast as they were drawn', () => {
    const strip = stripOf(bar(at(0, 0.6), DIRECTION + 0.02, LOOK.width), straightCurve(at(-16), at(16)))
    const kept = strip.pieces.map(() => true)
    const fit = fitStrip(strip, { parameters: [0, 0], width: 4, blur: 0.7 }, kept)
    // Turned by 0.02 about its middle, 16 px from either end.
    const turned = 16 * Math.tan(0.02)
    expect(fit?.parameters[0]).toBeCloseTo(0.6 - turned, 2)
    expect(fit?.parameters[1]).toBeCloseTo(0.6 + turned, 2)
    expect(fit?.width).toBeCloseTo(LOOK.width, 1)
    expect(fit?.blur).toBeCloseTo(LOOK.blur, 1)
    expect(fit?.contrast).toBeCloseTo(-LOOK.contrast, 0)
    expect(Math.sqrt(fit?.variance ?? Number.NaN)).toBeLessThan(0.5)
  })

  it('finds the centre and radius of a circle', () => {
    const centre = pixel(40.3, 39.8)
    const strip = stripOf(ring(centre, 25, LOOK.width), roundCurve(pixel(40, 40), 24.5, 0, 2 * Math.PI), 24)
    const fit = fitStrip(
      strip,
      { parameters: [0, 0, 0], width: 5, blur: 0.7 },
      strip.pieces.map(() => true),
    )
    expect(fit?.parameters[0]).toBeCloseTo(0.3, 2)
    expect(fit?.parameters[1]).toBeCloseTo(-0.2, 2)
    // Blurred, a round stroke looks a little nearer to its centre: by (blur² + 1/12)/2r.
    expect(fit?.parameters[2]).toBeCloseTo(0.5 - (LOOK.blur ** 2 + 1 / 12) / 50, 2)
  })

  it('has each piece where all are', () => {
    const strip = stripOf(bar(at(0, 0.6), DIRECTION, LOOK.width), straightCurve(at(-16), at(16)))
    const fit = fitStrip(
      strip,
      { parameters: [0, 0], width: 5, blur: 0.7 },
      strip.pieces.map(() => true),
    )
    expect(fit).not.toBeNull()
    for (const centre of fit ? pieceCentres(strip, fit) : []) {
      expect(centre?.offset).toBeCloseTo(0.6, 2)
      expect(centre?.wider).toBeCloseTo(0, 1)
      expect(centre?.contrast).toBeCloseTo(-LOOK.contrast, 0)
    }
  })
})

describe('the equations of a piece', () => {
  const strip = stripOf(bar(at(0), DIRECTION, LOOK.width), straightCurve(at(-16), at(16)))
  const [, , , piece] = strip.pieces
  const edge = edgeResponse(strip.curve.across(0), LOOK.blur)
  const squaresAt = (guess: { offset: number; turn: number; width: number; blur: number }) => {
    const equations = new PieceEquations()
    expect(piece && equations.solve(strip, piece, edge, guess)).toBe(true)
    return equations
  }

  it('have as right-hand side half of the slope of the squares with the offset', () => {
    const guess = { offset: 0.3, turn: 0, width: LOOK.width, blur: LOOK.blur }
    const { contrast, side } = squaresAt(guess)
    const h = 1e-4
    const slope =
      (squaresAt({ ...guess, offset: 0.3 + h }).squares - squaresAt({ ...guess, offset: 0.3 - h }).squares) /
      (2 * h)
    expect((contrast * (side[0] ?? Number.NaN)) / (-slope / 2)).toBeCloseTo(1, 3)
  })

  it('are symmetric, and settle at the truth', () => {
    const { matrix, side, contrast } = squaresAt({ offset: 0, turn: 0, width: LOOK.width, blur: LOOK.blur })
    for (let a = 0; a < OWN; a++)
      for (let b = 0; b < a; b++) expect(matrix[a * OWN + b]).toBe(matrix[b * OWN + a])
    expect((side[0] ?? Number.NaN) / ((matrix[0] ?? Number.NaN) * contrast)).toBeCloseTo(0, 2)
  })

  it('are none for a piece of fewer than twelve pixels', () => {
    const short = piece && { ...piece, end: piece.first + 11 }
    const guess = { offset: 0, turn: 0, width: LOOK.width, blur: LOOK.blur }
    expect(short && new PieceEquations().solve(strip, short, edge, guess)).toBe(false)
  })
})

describe('where a stroke lies in a piece', () => {
  it('goes by the curve’s parameters, here of its two ends', () => {
    const strip = stripOf(bar(at(0), DIRECTION, LOOK.width), straightCurve(at(-16), at(16)))
    const [first] = strip.pieces
    const fit = { parameters: Float64Array.of(1, 3), width: 5, blur: 0.8 }
    // The first of eight pieces of 32 px has its middle at 2 px.
    expect(first && guessAt(first, fit)).toMatchObject({ offset: 1 + (2 * 2) / 32, turn: 2 / 32 })
  })
})
