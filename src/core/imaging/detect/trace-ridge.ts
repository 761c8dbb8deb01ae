import type { ProfileReason } from '../../words/strokes.ts'
import { type BarGrid, barAt } from '../filter/bar-grid.ts'
import type { Ridge } from '../filter/ridge-score.ts'
import type { WayAcross } from '../strip/aligned-profile.ts'
import type { ReferenceCurve } from '../strip/reference-curve.ts'
import type { Strip } from '../strip/strip.ts'
import { type Traced, traceStroke } from '../trace/trace-stroke.ts'
import type { GreyPicture } from '../window/grey-picture.ts'

/** A piece shows the ridge when its bar is of this share of the ridge's contrast. */
const [LEAST_BAR, MOST_BAR] = [0.45, 2] as const
/** Beyond the edge of the ridge, pixels. */
const BESIDE = 9

/** A ridge along a strip that is to be traced. */
export interface SeenRidge {
  strip: Strip
  grid: BarGrid
  ridge: Ridge
  /** Where it lies across in each piece; null where it does not pass. */
  way: (piece: number) => WayAcross | null
  /** The curve that it leads to. */
  onto: ReferenceCurve
  /** How far across that may be looked at, pixels. */
  most?: number
  barred?: readonly (ProfileReason | undefined)[]
}

/** A ridge that was traced, and where it was seen. */
export interface TracedRidge {
  traced: Traced
  offsets: readonly (WayAcross | null)[]
}

/** Traces a ridge, beginning with the pieces that show it. @returns null when it does not settle */
export function traceRidge(grey: GreyPicture, seen: SeenRidge): TracedRidge | null {
  const { strip, grid, ridge, onto, barred = [] } = seen
  const { width, contrast } = ridge
  const layer = grid.layers.find((l) => l.width === width)
  if (layer === undefined) return null
  const offsets = strip.pieces.map((_, k) => {
    const way = seen.way(k)
    if (way === null || barred[k]) return null
    const bar = barAt(grid, layer, k, way.offset) / contrast
    return bar > LEAST_BAR && bar < MOST_BAR ? way : null
  })
  const half = Math.min(width / 2 + BESIDE, seen.most ?? Number.POSITIVE_INFINITY)
  const traced = traceStroke(grey, { strip, offsets, width, contrast, onto, half, barred })
  // A fit may turn what it was given inside out; that is another stroke, or none.
  return traced && traced.fit.contrast * contrast > 0 ? { traced, offsets } : null
}
