/** What each mapping of a view is called, and what it makes of a sheet, for somebody who has never heard of one. */
export const MAPPING_WORDS = {
  uniform: { name: 'Same both ways', makes: 'one scale all over' },
  'two-axis': { name: 'Two ways', makes: 'a scale along and one across' },
  affine: { name: 'Out of square', makes: 'two scales and a skew' },
  projective: { name: 'Photograph', makes: 'taken at a slant' },
} as const

/** A mapping by its name in files. */
export type NamedMapping = keyof typeof MAPPING_WORDS

const isNamed = (mapping: string): mapping is NamedMapping => Object.hasOwn(MAPPING_WORDS, mapping)

/** What a mapping is called, in quotes, by its name in files: `“Two ways”`. */
export const mappingName = (mapping: string): string =>
  `“${isNamed(mapping) ? MAPPING_WORDS[mapping].name : mapping}”`

/** A mapping with what it makes of a sheet: `Two ways, a scale along and one across`. */
export const mappingInFull = (mapping: NamedMapping): string =>
  `${MAPPING_WORDS[mapping].name}, ${MAPPING_WORDS[mapping].makes}`
