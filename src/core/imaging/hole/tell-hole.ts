import { type Pixel, pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { reason } from '../../words/core-words.ts'
import { bilevelEdgeVariance } from '../noise/bilevel-edge.ts'
import { pixelPhaseVariance } from '../noise/pixel-phase.ts'
import { lensVariance, thresholdVariance } from '../result/edge-model.ts'
import type { Covariance, Profile, SearchOptions, Section, StrokeCrossing } from '../result/stroke-types.ts'
import type { FittedHole } from './detect-hole.ts'
import { ALL, OF_LINES, varianceOf } from './fit-hole.ts'
import { ACROSS, BLUR, DIRECTION, HoleModel, ROUND, WIDTH } from './hole-model.ts'
import { holeCovariance } from './hole-noise.ts'
import { whereCross } from './where-cross.ts'

const { f64 } = elements

/** Places told of along each line, pixels apart. */
const APART = 2
/** Of the section, pixels from the middle of a line. */
const FAR = 4
const PER_PIXEL = 2

type Reading = NonNullable<SearchOptions['reading']>

/** The crossing of the centre lines of a hole, as any crossing is told. */
export function tellHole(hole: FittedHole, reading: Reading): StrokeCrossing {
  const { fit, pixels, origin } = hole
  const p = fit.parameters
  const side = reading === 'centre' ? 0 : reading === 'left' ? -0.5 : 0.5
  const widths = [Math.exp(f64(p, WIDTH[0])), Math.exp(f64(p, WIDTH[1]))] as const
  const blur = Math.exp(f64(p, BLUR))
  const across = ([0, 1] as const).map((i) => f64(p, ACROSS[i]) + side * widths[i]) as [number, number]
  const [x, y] = whereCross(p, across)
  const [ofX, ofY] = [new Float64Array(ALL), new Float64Array(ALL)]
  /** What the scan does not tell of each line, across it. */
  const more: Covariance = [0, 0, 0]
  const directions = [f64(p, DIRECTION[0]), f64(p, DIRECTION[1])] satisfies [number, number]
  const length = 2 * f64(p, ROUND + 2)
  for (const i of [0, 1] as const) {
    // By how much the crossing moves with the line across.
    const [ux, uy] = whereCross(p, i === 0 ? [1, 0] : [0, 1])
    const [dx, dy] = [Math.cos(directions[i]), Math.sin(directions[i])]
    const along = dx * x + dy * y
    for (const [of, u] of [
      [ofX, ux],
      [ofY, uy],
    ] as const) {
      of[ACROSS[i]] = u
      of[DIRECTION[i]] = u * along
      of[WIDTH[i]] = u * side * widths[i]
    }
    const width = widths[i]
    const ofEdge =
      side === 0 ? 0 : pixels.isBilevel ? thresholdVariance(width) : lensVariance({ width, blur })
    const ofPixels = pixels.isBilevel
      ? bilevelEdgeVariance(length, [-dy, dx]) * (side === 0 ? 0.5 : 1)
      : pixelPhaseVariance(width, length, [-dy, dx])
    more[0] += ux * ux * (ofEdge + ofPixels)
    more[1] += ux * uy * (ofEdge + ofPixels)
    more[2] += uy * uy * (ofEdge + ofPixels)
  }
  const noise = holeCovariance(pixels, fit, [ofX, ofY])
  const covariance: Covariance = [noise[0] + more[0], noise[1] + more[1], noise[2] + more[2]]
  const contrast = f64(p, OF_LINES)
  return {
    kind: 'crossing',
    reading,
    pixel: pixel(origin[0] + x, origin[1] + y),
    covariance,
    directions,
    shape: {
      width: widths[0],
      blur,
      contrast: Math.abs(contrast),
      dark: contrast < 0,
      noise: Math.sqrt(varianceOf(fit.squares, pixels)),
    },
    section: sectionOf(hole, side * widths[0]),
    profiles: profilesOf(hole, across, [x, y], Math.sqrt(Math.max(covariance[0], covariance[2]))),
  }
}

/** Places along both lines, those that lie on the other or on the circle left out. @param sigma of each as of the crossing */
function profilesOf(
  { fit, origin }: FittedHole,
  across: readonly [number, number],
  [x, y]: readonly [number, number],
  sigma: number,
): Profile[] {
  const p = fit.parameters
  const radius = f64(p, ROUND + 2)
  const inside = radius - Math.exp(f64(p, ROUND + 3)) / 2
  return ([0, 1] as const).flatMap((i) => {
    const [dx, dy] = [Math.cos(f64(p, DIRECTION[i])), Math.sin(f64(p, DIRECTION[i]))]
    const beside = Math.exp(f64(p, WIDTH[1 - i] ?? WIDTH[0])) / 2
    const count = Math.floor(radius / APART)
    return Array.from({ length: 2 * count + 1 }, (_, k): Profile => {
      const along = (k - count) * APART
      const [px, py] = [along * dx - across[i] * dy, along * dy + across[i] * dx]
      const centre: Pixel = pixel(origin[0] + px, origin[1] + py)
      const [fx, fy] = [px - f64(p, ROUND), py - f64(p, ROUND + 1)]
      const isClear = Math.hypot(px - x, py - y) > beside && Math.hypot(fx, fy) < inside
      return isClear
        ? { centre, sigma, kept: true }
        : { centre, sigma, kept: false, because: reason('profile.other-stroke') }
    })
  })
}

/** The cross profile of the first line between the other and the circle. @param shift of the reading, pixels */
function sectionOf({ fit, pixels }: FittedHole, shift: number): Section {
  const p = fit.parameters
  const [dx, dy] = [Math.cos(f64(p, DIRECTION[0])), Math.sin(f64(p, DIRECTION[0]))]
  const model = new HoleModel(p)
  const bins = Array.from({ length: 2 * FAR * PER_PIXEL + 1 }, () => ({ count: 0, seen: 0, fitted: 0 }))
  for (let k = 0; k < pixels.value.length; k++) {
    const [x, y] = [f64(pixels.x, k), f64(pixels.y, k)]
    const bin = bins[Math.round((y * dx - x * dy - f64(p, ACROSS[0]) + FAR) * PER_PIXEL)]
    if (bin === undefined) continue
    model.read(x, y)
    if (!model.isClearOf(0)) continue
    bin.count++
    bin.seen += f64(pixels.value, k)
    bin.fitted += f64(pixels.value, k) - f64(fit.residual, k)
  }
  const told = bins.map((bin, i) => ({ ...bin, at: i / PER_PIXEL - FAR })).filter(({ count }) => count > 0)
  return {
    at: told.map(({ at }) => at - shift),
    seen: told.map(({ seen, count }) => seen / count),
    fitted: told.map(({ fitted, count }) => fitted / count),
  }
}
