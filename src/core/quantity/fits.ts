import type Fraction from 'fraction.js'

/**
 * Limits of the classes of fit that are common on drawings, to 500 mm. Source: ISO 286-1 (1988 and 2010; the values were
 * those of the ISA system before), standard tolerances and fundamental deviations; from memory.
 */

/** Upper ends of the ranges of nominal size, millimetres, each included. */
const RANGES = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500]

const row = (values: string): readonly number[] => values.split(' ').map(Number)

/** Standard tolerances by grade, micrometres. */
const GRADES: ReadonlyMap<number, readonly number[]> = new Map([
  [5, row('4 5 6 8 9 11 13 15 18 20 23 25 27')],
  [6, row('6 8 9 11 13 16 19 22 25 29 32 36 40')],
  [7, row('10 12 15 18 21 25 30 35 40 46 52 57 63')],
  [8, row('14 18 22 27 33 39 46 54 63 72 81 89 97')],
  [9, row('25 30 36 43 52 62 74 87 100 115 130 140 155')],
  [10, row('40 48 58 70 84 100 120 140 160 185 210 230 250')],
  [11, row('60 75 90 110 130 160 190 220 250 290 320 360 400')],
])

/** How far a shaft stays below its nominal size at least, micrometres; a hole of the capital letter stays above it. */
const CLEARANCES: ReadonlyMap<string, readonly number[]> = new Map([
  ['d', row('20 30 40 50 65 80 100 120 145 170 190 210 230')],
  ['e', row('14 20 25 32 40 50 60 72 85 100 110 125 135')],
  ['f', row('6 10 13 16 20 25 30 36 43 50 56 62 68')],
  ['g', row('2 4 5 6 7 9 10 12 14 15 17 18 20')],
  ['h', row('0 0 0 0 0 0 0 0 0 0 0 0 0')],
])

/** One division, so that it is the number that is written: 0.021. */
const micrometres = (value: number): number => value / 1000

/**
 * How far above the nominal size a class of fit allows, at most and at least.
 *
 * @param mm nominal size, millimetres
 * @param code `H7`, `g6`, `JS9`: capitals for holes, small letters for shafts
 * @returns millimetres with their sign; undefined for a class or size that the table here does not have
 */
export function fitLimits(mm: Fraction, code: string): { upper: number; lower: number } | undefined {
  const [, letters = '', grade = ''] = /^([A-Za-z]+)(\d+)$/.exec(code) ?? []
  const range = RANGES.findIndex((end) => mm.compare(end) <= 0)
  const wide = GRADES.get(Number(grade))?.[range]
  if (mm.n === 0n || wide === undefined) return undefined
  const letter = letters.toLowerCase()
  if (letter === 'js') {
    const half = micrometres(wide / 2)
    return { upper: half, lower: -half }
  }
  const off = CLEARANCES.get(letter)?.[range]
  if (off === undefined) return undefined
  const [near, far] = [micrometres(off), micrometres(off + wide)]
  return letters === letter ? { upper: 0 - near, lower: -far } : { upper: far, lower: near }
}
