import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCircle } from '../../../../src/core/imaging/index.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { between } from '../simulate/look.ts'
import { dirtOn, type LargeRing, scanAlong } from './large-ring.ts'
import { bySvg, SVG_SIDE } from './ring-by-svg.ts'

/** A pick is so far off the middle of the stroke at most, pixels. */
const OFF = 5

/** What was found of a ring as large as a sheet. */
export interface LargeRingOutcome {
  /** Of the diameter, pixels: how far it is from the one that was drawn, and how sure it is told to be. */
  error: number
  stated: number
  /** Bytes of the scan that there were, and milliseconds of the processor. */
  bytes: number
  time: number
}

/**
 * A round stroke 3 to 7 px wide, with a stain or a stroke across it every 250 px, picked at three places.
 * @param sweep radians: of the whole circle, or of an arc that is drawn and picked from end to end
 * @returns null when it was not found
 */
export async function largeRingTrial(
  diameter: number,
  sweep: number,
  seed: number,
  drawnBy: 'distance' | 'SVG' = 'distance',
): Promise<LargeRingOutcome | null> {
  const random = caseStream(seed)
  const whole = sweep > 6
  const radius = diameter / 2 + between(random, -0.5, 0.5)
  const centre = pixel(7000 + between(random, -1, 1), 7000 + between(random, -1, 1))
  const from = between(random, 0, 1)
  const ring = { centre, radius, from, sweep }
  const look = { width: between(random, 3, 7), blur: between(random, 0.5, 0.9), noise: between(random, 2, 5) }
  const drawing: LargeRing = { ...ring, ...look, dirt: dirtOn(ring, 250, random) }
  const picture =
    drawnBy === 'SVG' ? await scanAlong(drawing, random, SVG_SIDE, bySvg) : await scanAlong(drawing, random)
  const pick = (share: number): Pixel => {
    const angle = from + sweep * (whole ? share * (2 / 3) : 0.02 + 0.96 * share)
    const away = radius + between(random, -OFF, OFF)
    return pixel(centre[0] + away * Math.cos(angle), centre[1] + away * Math.sin(angle))
  }
  const picks: [Pixel, Pixel, Pixel] = [pick(0), pick(0.5), pick(1)]
  const begun = process.cpuUsage()
  const found = findCircle(picture, picks, { reach: 8, whole })
  const { user, system } = process.cpuUsage(begun)
  if (found.kind === 'none') return null
  return {
    error: 2 * (found.radius - radius),
    stated: 2 * Math.sqrt(found.covariance[5]),
    bytes: picture.reduce((sum, { data }) => sum + data.length, 0),
    time: (user + system) / 1000,
  }
}
