import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Dice } from '../dice.ts'
import type { Face, GlyphRoom } from '../face.ts'
import { CELL_HEIGHT, SKELETONS } from './skeletons.ts'
import { type StrokePlace, strokePoints } from './stroke-points.ts'

/** The ways of one draughtsman, within which each figure of his varies. Ranges: from, to. */
export interface PenHand {
  /** Degrees. */
  readonly slant: readonly [number, number]
  /** Width of letters against their skeletons. */
  readonly breadth: readonly [number, number]
  /** Width of the pen, in heights of a digit. */
  readonly pen: readonly [number, number]
  /** How far strokes stray from their skeleton, in heights of a digit. */
  readonly wobble: readonly [number, number]
  /** Gap between letters, in heights of a digit. */
  readonly gap: readonly [number, number]
  /** Whether a 1 has a flag. */
  readonly flagged: boolean
}

const FLAGGED_ONE = { width: 1.6, strokes: ['L .1 4.7 1.1 6 1.1 0'] }
const POINTS = new Map<string, readonly StrokePlace[]>()

function pointsOf(stroke: string): readonly StrokePlace[] {
  const kept = POINTS.get(stroke)
  if (kept) return kept
  const made = strokePoints(stroke)
  POINTS.set(stroke, made)
  return made
}

/** A hand at work on one figure. */
export function penFace(hand: PenHand, d: Dice): Face {
  const slant = d.between(...hand.slant)
  const breadth = d.between(...hand.breadth)
  const pen = d.between(...hand.pen)
  const wobble = d.between(...hand.wobble)
  const gap = d.between(...hand.gap)
  const lean = Math.tan((slant * Math.PI) / 180)
  const skeletonOf = (glyph: string) => {
    const found = glyph === '1' && hand.flagged ? FLAGGED_ONE : SKELETONS[glyph.toUpperCase()]
    if (!found) throw new Error(`No pen has a skeleton for "${glyph}".`)
    return found
  }
  const room = (glyph: string): GlyphRoom => {
    if (glyph === ' ') return { advance: 0.55 * breadth + gap, left: 0, right: 0, top: 0, bottom: 0 }
    const skeleton = skeletonOf(glyph)
    const ys = skeleton.strokes.flatMap((stroke) => pointsOf(stroke).map(([, y]) => y / CELL_HEIGHT))
    const [top, bottom] = [Math.max(...ys), Math.min(...ys)]
    const width = (skeleton.width / CELL_HEIGHT) * breadth
    return {
      advance: width + pen + gap,
      left: Math.min(0, bottom * lean),
      right: width + pen + Math.max(0, top * lean),
      top: -top - pen / 2,
      bottom: -bottom + pen / 2,
    }
  }
  const draw = (context: SKRSContext2D, glyph: string, x: number, y: number, size: number) => {
    if (glyph === ' ') return
    // Each letter is written anew: a little turned, wider or narrower, and bent by two slow waves.
    const turn = d.normal() * wobble * 0.8
    const stretch = 1 + d.normal() * wobble * 1.2
    const phases = [d.between(0, 6.3), d.between(0, 6.3), d.between(0, 6.3), d.between(0, 6.3)] as const
    const place = ([px, py]: StrokePlace): StrokePlace => {
      const u = (px / CELL_HEIGHT) * breadth * stretch
      const v = py / CELL_HEIGHT
      const bentU =
        u + wobble * 0.6 * Math.sin(5 * v + phases[0]) + wobble * 0.25 * Math.sin(13 * v + phases[1])
      const bentV =
        v + wobble * 0.6 * Math.sin(6 * u + phases[2]) + wobble * 0.25 * Math.sin(14 * u + phases[3])
      const along = bentU + bentV * (lean + turn) + pen / 2
      return [x + along * size, y - bentV * size]
    }
    context.lineCap = 'round'
    context.lineJoin = 'round'
    for (const stroke of skeletonOf(glyph).strokes) {
      const points = pointsOf(stroke).map(place)
      const first = points[0]
      if (!first) continue
      context.lineWidth = pen * size * d.between(0.88, 1.12)
      context.beginPath()
      context.moveTo(...first)
      for (const point of points.slice(1)) context.lineTo(...point)
      context.stroke()
    }
  }
  return { room, draw, stroke: pen, slant, unsteady: wobble * 0.5 }
}
