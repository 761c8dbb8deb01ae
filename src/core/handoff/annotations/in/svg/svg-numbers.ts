const NUMBER = '[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?'
const NUMBERS = new RegExp(NUMBER, 'g')
const LENGTH = new RegExp(`^(${NUMBER})(%|[A-Za-z]*)$`)

/** The numbers in a text, in order; what stands between them is passed over. */
export const numbersIn = (text: string): number[] => (text.match(NUMBERS) ?? []).map(Number)

/** User units in each unit of length. Source: CSS Values and Units Level 3, section 5.2. */
const USER_UNITS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
}

/**
 * A length in user units; NaN when it is not understood.
 * @param whole what a hundred per cent are
 */
export function svgLength(text: string, whole: number): number {
  const [, number = '', unit = ''] = LENGTH.exec(text.trim()) ?? []
  if (number === '') return Number.NaN
  return Number(number) * (unit === '%' ? whole / 100 : (USER_UNITS[unit.toLowerCase()] ?? Number.NaN))
}
