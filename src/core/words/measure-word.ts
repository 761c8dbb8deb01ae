/** What the name of a measure is in a sentence: `slot width` of `slot-width`. */
export const measureWord = (measure: string): string => measure.replace('-', ' ')

/** Measures that lie between two marks, and how that is said. */
const BETWEEN: Readonly<Record<string, string>> = {
  distance: 'distance between',
  spacing: 'spacing between',
  angle: 'angle between',
  centres: 'distance between the centres of',
}

/** What of marks a measure is, in a sentence before their names: `distance between`, `diameter of`. */
export const measureOf = (measure: string): string => BETWEEN[measure] ?? `${measureWord(measure)} of`
