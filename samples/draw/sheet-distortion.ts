import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Pt } from './plane.ts'

/** What a century and a scanner did to the sheet. */
export const DISTORTION = {
  /** Sheet as drawn on, mm. */
  width: 17 * 25.4,
  height: 11 * 25.4,
  dpi: 300,
  /** Stretch along the grain (the sheet's long way) and across it. */
  alongGrain: 1 - 0.009,
  acrossGrain: 1 - 0.0035,
  /** Degrees from the image's x axis towards its y axis. */
  turn: 0.6,
  imageWidth: 5200,
  imageHeight: 3420,
} as const

const D = DISTORTION
const turn = (D.turn * Math.PI) / 180
const perMm = D.dpi / 25.4

/** Pixels per millimetre of sheet as drawn, along and across the grain. */
export const PIXELS_ALONG = perMm * D.alongGrain
export const PIXELS_ACROSS = perMm * D.acrossGrain

/** From millimetres on the sheet as drawn to pixels of the scan. */
export function toPixel([x, y]: Pt): Pixel {
  const u = PIXELS_ALONG * (x - D.width / 2)
  const v = PIXELS_ACROSS * (y - D.height / 2)
  return pixel(
    D.imageWidth / 2 + u * Math.cos(turn) - v * Math.sin(turn),
    D.imageHeight / 2 + u * Math.sin(turn) + v * Math.cos(turn),
  )
}

/** The way back: from pixels of the scan to millimetres on the sheet as drawn. */
export function toPaper([px, py]: Pt): Pt {
  const dx = px - D.imageWidth / 2
  const dy = py - D.imageHeight / 2
  return [
    (dx * Math.cos(turn) + dy * Math.sin(turn)) / PIXELS_ALONG + D.width / 2,
    (dy * Math.cos(turn) - dx * Math.sin(turn)) / PIXELS_ACROSS + D.height / 2,
  ]
}
