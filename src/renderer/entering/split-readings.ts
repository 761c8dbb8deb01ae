import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'

/** Begins like a number, a fraction or a sign before one. */
const NUMBER = /^[+\-−–]?[\d.,¼-¾⅐-⅞]/
const FRACTION = /^(?:\d+[/⁄∕]\d+|[¼-¾⅐-⅞])/
/** What a fraction goes on after: a whole number by itself or behind feet. */
const WHOLE_AT_END = /(?:^|\s|['’′]-?)[+\-−–]?\d+$/
const FEET_AT_END = /(?:['’′]|\bft\.?|\bfeet)-?$/i
const FOOT_SIGN = /['’′](?!['’′])|\bft\b|\bfeet\b/i
const PARTS_OF_A_DEGREE = /\d['’′"”″]$/
/** Digits, a comma and three digits: a thousand, or decimals. */
const THREE_AFTER_COMMA = /(?<![\d.,])(\d+),(\d{3})(?![\d.,])/g

/**
 * Several readings in one line, parted by spaces, semicolons or line ends: `11 1/2 11 17/32` are two. A fraction belongs to
 * the whole number before it, a unit to what stands before it, inches to their feet, minutes to their degrees.
 * @param commas whether a comma begins decimals also before three digits, as elsewhere in the job
 */
export function splitReadings(text: string, kind: QuantityKind, commas = false): string[] {
  const written = commas ? text.replace(THREE_AFTER_COMMA, '$1.$2') : text
  return written.split(/[;\r\n]+/).flatMap((part) => inOneLine(part, kind))
}

function inOneLine(line: string, kind: QuantityKind): string[] {
  const readings: string[] = []
  for (const word of line.split(/\s+/)) {
    if (word === '') continue
    const before = readings.at(-1)
    if (before !== undefined && goesOn(before, word, kind))
      readings[readings.length - 1] = `${before} ${word}`
    else readings.push(word)
  }
  return readings
}

function goesOn(before: string, word: string, kind: QuantityKind): boolean {
  if (!NUMBER.test(word)) return true
  if (kind === 'angle') return /[°º]/.test(before) && !/[°º]/.test(word) && PARTS_OF_A_DEGREE.test(word)
  if (kind !== 'length') return false
  if (FRACTION.test(word)) return WHOLE_AT_END.test(before) || FEET_AT_END.test(before)
  return FEET_AT_END.test(before) && !FOOT_SIGN.test(word)
}
