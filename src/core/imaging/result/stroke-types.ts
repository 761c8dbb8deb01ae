import type { Pixel } from '../../geometry/frames.ts'
import type { StrokeReading } from '../../job/model/types.ts'
import type { NoStrokeReason, ProfileReason } from '../../words/strokes.ts'
import type { Ink } from '../window/ink.ts'

export type { NoStrokeReason, ProfileReason }

/** Symmetric 2 × 2, pixels². */
export type Covariance = [xx: number, xy: number, yy: number]

/** How a stroke is looked for. */
export interface SearchOptions {
  /**
   * centre: the middle of the stroke. left, right: its edges as one goes along it: from the first rough pick to the
   * second; round a circle clockwise as the scan is seen (x right, y down), so that right is inside; at a point
   * towards the right of the scan, or down it where the stroke is upright. Default centre.
   */
  reading?: StrokeReading
  /** How far the stroke may lie from where it is looked for, pixels. Default 8. */
  reach?: number
  /**
   * Only strokes darker or lighter than their ground are looked for. Left out: what the window shows to be ink, paper
   * being the most of it; where it does not show that, strokes of either kind.
   */
  ink?: Ink | undefined
}

/** How a place on a stroke is looked for. */
export interface PointOptions extends Omit<SearchOptions, 'reading'> {
  /** As of any search; or which one it is, told by the direction that the stroke is found to have, as of `StrokePoint`. */
  reading?: StrokeReading | ((direction: number) => StrokeReading)
}

/** How a circle or an arc is looked for. */
export interface RoundOptions extends SearchOptions {
  /** The whole circle, or else only the arc from the first pick through the second to the third. Default true. */
  whole?: boolean
}

/** What a stroke looks like across itself. */
export interface StrokeShape {
  /** Pixels, at half of its contrast. */
  width: number
  /** Standard deviation of the blur of its edges, pixels. */
  blur: number
  /** Grey values between stroke and ground, above 0. */
  contrast: number
  /** Whether it is darker than its ground. */
  dark: boolean
  /** Standard deviation of the grey values about the fitted profile. */
  noise: number
}

/** One place where the stroke was looked at across itself. */
export interface Profile {
  /** Where the wanted reading of the stroke lies, pixels of the scan. */
  centre: Pixel
  /** Standard uncertainty across the stroke, pixels. */
  sigma: number
  kept: boolean
  /** Why it was left out. */
  because?: ProfileReason
}

/** The cross profile, averaged along the stroke: what was seen and what was fitted. */
export interface Section {
  /** Pixels from where the wanted reading lies, across the stroke. */
  at: number[]
  seen: number[]
  fitted: number[]
}

interface Found {
  /** Which part of the stroke was read. */
  reading: StrokeReading
  shape: StrokeShape
  section: Section
  /** Kept and left out, in order along the stroke. */
  profiles: Profile[]
}

/** A place on a stroke: settled across it, and along it only as well as it was pointed at. */
export interface StrokePoint extends Found {
  kind: 'point'
  pixel: Pixel
  /** Standard uncertainty across the stroke, pixels. */
  across: number
  /** Of the stroke, radians in the pixels of the scan. */
  direction: number
}

/** Where two strokes cross or meet, settled both ways. */
export interface StrokeCrossing extends Found {
  kind: 'crossing'
  pixel: Pixel
  covariance: Covariance
  directions: [number, number]
}

/** A straight stroke. */
export interface StrokeLine extends Found {
  kind: 'line'
  /** Feet on the line of the outermost kept profiles, in the direction of the rough picks. */
  ends: [Pixel, Pixel]
  /**
   * Standard uncertainty of each kept profile's centre across the stroke, pixels: such that a line fitted through the
   * kept centres with it, as if they were independent, has the uncertainty that was found.
   */
  sigma: number
}

/** A circle or an arc of one. */
export interface StrokeCircle extends Found {
  kind: 'circle' | 'arc'
  centre: Pixel
  radius: number
  /** As of a `StrokeLine`, for a circle fitted through the kept centres. */
  sigma: number
  /** Of (centre x, centre y, radius), pixels². */
  covariance: [xx: number, xy: number, xr: number, yy: number, yr: number, rr: number]
}

/** Any stroke that was found. */
export type FoundStroke = StrokePoint | StrokeCrossing | StrokeLine | StrokeCircle

/** There is no clear stroke. */
export interface NoStroke {
  kind: 'none'
  because: NoStrokeReason
}
