import type { Dice } from './dice.ts'

/** How hard a picture is to read, as whoever keeps drawings would say it. */
export const LEVELS = ['clean', 'moderate', 'bad'] as const
export type Level = (typeof LEVELS)[number]

type Range = readonly [number, number]

/**
 * What age and scanner do at one level. Ranges are from, to; shares are of all pictures. Lengths are in heights `h` of a
 * full digit unless they are said to be pixels; greys are of 255.
 */
export interface LevelOf {
  /** Sigma of the blur, h; never less than half a pixel. */
  readonly blur: Range
  /** How far ink stands off its ground, of the whole range from ground to black (or to white). */
  readonly contrast: Range
  /** Contrast against the sigma of the noise of a pixel, of digits 28 pixels high or more; smaller ones have less noise. */
  readonly noiseRatio: Range
  /** How far the ground wanders, greys. */
  readonly unevenGround: Range
  /** Share of glyphs that have a break, and how wide it is, h. */
  readonly breaks: { readonly share: number; readonly width: Range }
  /** Specks in a square of ten heights. */
  readonly specks: Range
  /** Share with a line through the figure. */
  readonly crossed: number
  /** Share with a stain over part of it. */
  readonly stained: number
  /** Share whose ink fades along the figure, and down to what. */
  readonly faded: { readonly share: number; readonly to: Range }
  /** Share of blueprints: light strokes on a dark ground. */
  readonly blueprint: number
  /** Share kept as JPEG, and at which quality. */
  readonly jpeg: { readonly share: number; readonly quality: Range }
  /** Share with the lines of a drawing beside it. */
  readonly surrounded: number
}

/**
 * clean: a good scan of a good print. moderate: read without thinking, yet blurred, noisy, crossed or stained. bad: one
 * has to look twice, and most people still get it. No level takes away what a figure is told by: breaks are narrower
 * than a stroke's own turn, one a glyph at most, and none is put on a point, a mark or a bar; what crosses is thinner
 * than the pen and goes on past the figure. The bounds are chosen by looking: common practice, no source.
 */
export const LEVEL: Readonly<Record<Level, LevelOf>> = {
  clean: {
    blur: [0.01, 0.025],
    contrast: [0.75, 0.95],
    noiseRatio: [30, 80],
    unevenGround: [0, 4],
    breaks: { share: 0, width: [0, 0] },
    specks: [0, 0.3],
    crossed: 0,
    stained: 0,
    faded: { share: 0, to: [1, 1] },
    blueprint: 0.12,
    jpeg: { share: 0.4, quality: [85, 95] },
    surrounded: 0.65,
  },
  moderate: {
    blur: [0.025, 0.05],
    contrast: [0.5, 0.8],
    noiseRatio: [8, 18],
    unevenGround: [6, 22],
    breaks: { share: 0.2, width: [0.04, 0.09] },
    specks: [0.5, 6],
    crossed: 0.3,
    stained: 0.3,
    faded: { share: 0.3, to: [0.75, 0.95] },
    blueprint: 0.2,
    jpeg: { share: 0.6, quality: [50, 80] },
    surrounded: 0.8,
  },
  bad: {
    blur: [0.04, 0.062],
    contrast: [0.38, 0.6],
    noiseRatio: [5.5, 9],
    unevenGround: [15, 40],
    breaks: { share: 0.45, width: [0.07, 0.13] },
    specks: [4, 16],
    crossed: 0.6,
    stained: 0.5,
    faded: { share: 0.5, to: [0.65, 0.85] },
    blueprint: 0.25,
    jpeg: { share: 0.7, quality: [30, 55] },
    surrounded: 0.85,
  },
}

export const within = (range: Range, d: Dice): number => d.between(range[0], range[1])
