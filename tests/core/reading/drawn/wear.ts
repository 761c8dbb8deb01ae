import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Dice } from './dice.ts'
import type { LevelOf } from './levels.ts'
import { within } from './levels.ts'
import type { SetFigure } from './set-figure.ts'

/** What a glyph is told by if it is small: a break there would take all of it away. */
const SMALL = /[.,'"’”°_\-–+±:=]/

/** Takes ink away where strokes are broken: one place a glyph at most, and none of its small marks. */
export function breakStrokes(context: SKRSContext2D, figure: SetFigure, { breaks }: LevelOf, d: Dice): void {
  context.save()
  context.globalCompositeOperation = 'destination-out'
  for (const g of figure.glyphs) {
    if (SMALL.test(g.glyph) || !d.happens(breaks.share)) continue
    const radius = (within(breaks.width, d) * (g.bottom - g.top)) / 2
    context.beginPath()
    context.arc(d.between(g.left, g.right), d.between(g.top, g.bottom), radius, 0, 2 * Math.PI)
    context.fill()
  }
  context.restore()
}

/** Specks of dirt, far smaller than a point: `density` in a square of ten heights. */
export function drawSpecks(
  context: SKRSContext2D,
  [width, height]: readonly [number, number],
  h: number,
  density: number,
  d: Dice,
): void {
  const count = Math.round((density * width * height) / (100 * h * h))
  for (let i = 0; i < count; i++) {
    context.beginPath()
    context.arc(d.between(0, width), d.between(0, height), h * d.between(0.01, 0.028), 0, 2 * Math.PI)
    context.fill()
  }
}
