/** What a mapping makes of a sheet, for somebody who has never heard of one. */
export const SCALES_IN_WORDS = {
  uniform: 'one scale',
  'two-axis': 'a scale along and one across',
  affine: 'two scales, out of square',
  projective: 'photographed at a slant',
} as const

/** A mapping by its name in files. */
export type NamedMapping = keyof typeof SCALES_IN_WORDS
