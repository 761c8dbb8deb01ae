import { type Pixel, pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { SearchContext } from '../detect/detector.ts'
import { hasTwoValues } from '../window/bilevel.ts'
import { type GreyPicture, windowsOf } from '../window/grey-picture.ts'
import { fitHole, type HoleFit, type HolePixels, OF_CIRCLE, OF_LINES, varianceOf } from './fit-hole.ts'
import { type Hole, holeAround } from './hole-around.ts'
import { ACROSS, BLUR, DIRECTION, HoleModel, ROUND, WIDTH } from './hole-model.ts'
import { linesThrough } from './start-of-hole.ts'
import { whereCross } from './where-cross.ts'

const { f64, grey: greyOf } = elements

/** Beyond the circle lines may end: pixels are fitted no farther out than this beyond its middle or its edge. */
const BEYOND_MIDDLE = 2
const BEYOND_EDGE = 1
const FIRST_BLUR = 0.7

const LEAST_CONTRAST = 6
/** Lines and circle are drawn alike: contrasts and widths of the lines differ by no more than this factor. */
const MOST_UNLIKE = 2.5
/** Of the radius: wider lines leave no hole. */
const WIDEST = 0.5
const SOFTEST = 2
/** So far the circle may have moved from where it was seen, pixels. */
const MOVED = 1.5
const LEAST_SINE = 0.39
/** Centre lines cross within this share of the radius of the middle. */
const OFF_MIDDLE = 0.4
/** What is left may be so much of the contrast, of a grey scan and of one bit; or so many times the noise of the window. */
const LEFT_OVER = 0.12
const LEFT_OVER_OF_ONE_BIT = 0.3
const OF_NOISE = 2.5
/** Each of the four arms shows ink within these shares of what it should. */
const SHOWN: readonly [number, number] = [0.6, 1.4]
const LEAST_PIXELS = 2

/** A small hole with two straight strokes through it, fitted together. */
export interface FittedHole {
  /** From where places are told, pixels of the scan. */
  origin: Pixel
  pixels: HolePixels
  fit: HoleFit
}

/**
 * The centre lines of a small hole about a place: too short beside one another and the circle to be followed each by itself,
 * they are fitted together with it.
 */
export function detectHole(context: SearchContext, at: Pixel): FittedHole | NoStrokeReason {
  const none = reason('stroke.no-crossing-within', { reach: context.reach })
  const hole = holeAround(context, at)
  const lines = hole && linesThrough(context, hole)
  if (hole === null || lines === null) return none
  const pixels = pixelsOf(context.grey, hole)
  const round = { centre: pixel(0, 0), radius: hole.radius, width: hole.width }
  const fit = fitHole(pixels, { lines, round, blur: FIRST_BLUR })
  if (fit === null) return none
  const [x, y] = whereCross(fit.parameters, [f64(fit.parameters, ACROSS[0]), f64(fit.parameters, ACROSS[1])])
  const away = Math.hypot(hole.centre[0] + x - at[0], hole.centre[1] + y - at[1])
  if (!(away <= context.reach) || !isLikely(hole, fit, context) || !isLikeItsPixels(pixels, fit, context))
    return none
  return { origin: hole.centre, pixels, fit }
}

/** Whether it is a shape that is drawn. */
function isLikely(hole: Hole, { parameters: p }: HoleFit, { ink, usualInk }: SearchContext): boolean {
  const sign = (ink ?? usualInk) === 'dark' ? -1 : 1
  const [lines, circle] = [sign * f64(p, OF_LINES), sign * f64(p, OF_CIRCLE)]
  const [a, b] = [Math.exp(f64(p, WIDTH[0])), Math.exp(f64(p, WIDTH[1]))]
  const radius = f64(p, ROUND + 2)
  const [x, y] = whereCross(p, [f64(p, ACROSS[0]), f64(p, ACROSS[1])])
  const alike = (u: number, v: number): boolean => Math.max(u, v) < MOST_UNLIKE * Math.min(u, v)
  // Of a thin line the contrast is told by its width: what is seen of it is both together.
  const seen = lines * Math.min(1, Math.max(a, b))
  return (
    Math.min(seen, circle) > LEAST_CONTRAST &&
    alike(seen, circle) &&
    alike(a, b) &&
    Math.max(a, b) < WIDEST * radius &&
    Math.exp(f64(p, BLUR)) < SOFTEST &&
    Math.abs(radius - hole.radius) < MOVED &&
    Math.hypot(f64(p, ROUND), f64(p, ROUND + 1)) < MOVED &&
    Math.abs(Math.sin(f64(p, DIRECTION[1]) - f64(p, DIRECTION[0]))) > LEAST_SINE &&
    Math.hypot(x - f64(p, ROUND), y - f64(p, ROUND + 1)) < OFF_MIDDLE * radius
  )
}

/** Whether little is left of its pixels, and each of the four arms shows by itself. */
function isLikeItsPixels(pixels: HolePixels, fit: HoleFit, { noise }: SearchContext): boolean {
  const p = fit.parameters
  const left = Math.sqrt(varianceOf(fit.squares, pixels))
  const contrast = Math.abs(f64(p, OF_LINES))
  const share = pixels.isBilevel ? LEFT_OVER_OF_ONE_BIT : LEFT_OVER
  if (left > Math.max(share * contrast, OF_NOISE * noise)) return false
  const [x, y] = whereCross(p, [f64(p, ACROSS[0]), f64(p, ACROSS[1])])
  const model = new HoleModel(p)
  const arms = Array.from({ length: 4 }, () => ({ seen: 0, fitted: 0, count: 0 }))
  for (let k = 0; k < pixels.value.length; k++) {
    model.read(f64(pixels.x, k), f64(pixels.y, k))
    for (const i of [0, 1] as const) {
      if (!model.isClearOf(i) || !model.isOn(i)) continue
      const direction = f64(p, DIRECTION[i])
      const along =
        (f64(pixels.x, k) - x) * Math.cos(direction) + (f64(pixels.y, k) - y) * Math.sin(direction)
      const arm = arms[2 * i + (along > 0 ? 1 : 0)]
      if (arm === undefined) continue
      const fitted = f64(p, OF_LINES) * model.lines
      arm.fitted += fitted
      arm.seen += fitted + f64(fit.residual, k)
      arm.count++
    }
  }
  return arms.every(
    ({ seen, fitted, count }) =>
      count >= LEAST_PIXELS && seen / fitted > SHOWN[0] && seen / fitted < SHOWN[1],
  )
}

/** The pixels of a hole, its circle among them. */
function pixelsOf(grey: GreyPicture, { centre, radius, width }: Hole): HolePixels {
  const far = radius + Math.min(width / 2 + BEYOND_EDGE, BEYOND_MIDDLE)
  const [cx, cy] = [centre[0] - 0.5, centre[1] - 0.5]
  const seen: { u: number; v: number; grey: number }[] = []
  for (const { left, top, width, height, data } of windowsOf(grey)) {
    const [right, bottom] = [left + width - 1, top + height - 1]
    for (let v = Math.max(top, Math.ceil(cy - far)); v <= Math.min(bottom, cy + far); v++)
      for (let u = Math.max(left, Math.ceil(cx - far)); u <= Math.min(right, cx + far); u++)
        if (Math.hypot(u - cx, v - cy) <= far)
          seen.push({ u, v, grey: greyOf(data, (v - top) * width + u - left) })
  }
  const value = Float64Array.from(seen, (pixel) => pixel.grey)
  return {
    x: Float64Array.from(seen, ({ u }) => u - cx),
    y: Float64Array.from(seen, ({ v }) => v - cy),
    value,
    column: Int32Array.from(seen, ({ u }) => u),
    row: Int32Array.from(seen, ({ v }) => v),
    isBilevel: hasTwoValues(value),
  }
}
