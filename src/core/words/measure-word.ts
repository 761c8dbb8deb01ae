/** What the name of a measure is in a sentence: `slot width` of `slot-width`. */
export const measureWord = (measure: string): string => measure.replace('-', ' ')
