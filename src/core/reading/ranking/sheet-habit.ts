import { type Length, type LengthUnit, partsOfAnInch } from '../../quantity/length.ts'
import { figureOrNone } from '../../quantity/parse/figure-or-none.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'

/** How figures are written: to which fraction or place, with or without what. Shares sum to 1. */
export interface SheetHabit {
  /** Share of each way to divide the unit, by its name: see `divisionOf`. */
  readonly divisions: ReadonlyMap<string, number>
  /** Of those of a foot and more, how many are in feet. */
  readonly inFeet: number
  /** Of those in inches, how many have an inch mark. */
  readonly marked: number
  /** Share of what a figure is the size of. */
  readonly of: ReadonlyMap<string, number>
}

/** What is known of how a sheet writes its figures. */
export interface KnownOfSheet {
  /** Other figures of the sheet, as they are written; those that can't be read say nothing. */
  readonly figures?: readonly string[]
  /** How many of its figures end in each denominator, by it: 1 for whole inches. In place of figures, or beside them. */
  readonly denominators?: Readonly<Record<number, number>>
}

/**
 * Shares before anything is known of a sheet, by the unit of the job. In inches mostly binary fractions, coarse ones
 * oftener since fractions are reduced; in millimetres mostly whole ones. Common practice, no source.
 */
const DIVISIONS: Readonly<Record<LengthUnit, Readonly<Record<string, number>>>> = {
  in: {
    '1': 0.22,
    '1/2': 0.15,
    '1/4': 0.15,
    '1/8': 0.15,
    '1/16': 0.12,
    '1/32': 0.05,
    '1/64': 0.02,
    '1/n': 0.005,
    '.0': 0.005,
    '.00': 0.015,
    '.000': 0.08,
    '.0000': 0.015,
    mm: 0.02,
  },
  mm: {
    mm: 0.72,
    'mm.0': 0.17,
    'mm.00': 0.04,
    'mm.000': 0.01,
    '1': 0.01,
    '1/2': 0.01,
    '1/4': 0.01,
    '1/8': 0.01,
    '1/16': 0.01,
    '1/32': 0.005,
    '.000': 0.005,
  },
}

/** Share of a way that is not in the list. */
const RARE = 1e-4

/** How many figures of a sheet weigh as much as what is usual: sheets differ more in how they divide the inch. */
const USUAL_WEIGHS = { divisions: 6, of: 24 }

/** Shares of what figures are the size of, before anything is known. Common practice, no source. */
const OF: Readonly<Record<string, number>> = {
  length: 0.7,
  diameter: 0.12,
  radius: 0.07,
  centres: 0.02,
  angle: 0.04,
  gauge: 0.02,
  count: 0.02,
  slope: 0.01,
}

/** How a length divides its unit: `1/16` for sixteenths, `.000` for three decimals of an inch, `mm.0` for tenths. */
export function divisionOf(length: Length): string {
  const parts = partsOfAnInch(length)
  if (parts !== null) return parts === 1 ? '1' : isBinary(parts) ? `1/${parts}` : '1/n'
  const step = Number(length.graduation) / (length.system === 'in' ? 25.4 : 1)
  const places = Math.max(0, Math.round(-Math.log10(step)))
  const decimals = places === 0 ? '' : `.${'0'.repeat(places)}`
  return length.system === 'in' ? decimals || '1' : `mm${decimals}`
}

const isBinary = (parts: number): boolean => parts <= 128 && Number.isInteger(Math.log2(parts))

export const INCH_MARK = /["”″]|\bins?\b|\binch/i
const FOOT = 304.8

/** Of lists of figures, what was counted of them, by what else it rests on: many are asked for beside one list. */
const counted = new WeakMap<readonly string[], { readonly key: string; readonly habit: SheetHabit }>()

/**
 * How a sheet writes its figures: what is usual, and what is known of it; the more that is, the more it counts.
 * @param known its list of figures is not to be changed afterwards: what was counted of it is kept as long as it is
 */
export function sheetHabit(known: KnownOfSheet, context: LengthContext): SheetHabit {
  const { figures } = known
  if (figures === undefined) return countHabit(known, context)
  const key = JSON.stringify([context, known.denominators])
  const before = counted.get(figures)
  if (before?.key === key) return before.habit
  const habit = countHabit(known, context)
  counted.set(figures, { key, habit })
  return habit
}

function countHabit({ figures = [], denominators = {} }: KnownOfSheet, context: LengthContext): SheetHabit {
  const divisions = new Map<string, number>()
  const of = new Map<string, number>()
  const feet = { yes: 1, no: 1 }
  const mark = { yes: 1, no: 1 }
  for (const [parts, howMany] of Object.entries(denominators)) {
    const n = Number(parts)
    add(divisions, n === 1 ? '1' : isBinary(n) ? `1/${n}` : '1/n', howMany)
  }
  for (const text of figures) {
    const figure = figureOrNone(text, context)
    if (figure === null) continue
    add(of, figure.of, 1)
    const { length } = figure
    if (length === undefined || figure.gauge !== undefined) continue
    add(divisions, divisionOf(length), 1)
    if (length.system !== 'in') continue
    const marked = INCH_MARK.test(text) ? 'yes' : 'no'
    mark[marked] += 1
    if (Number(length.mm) >= FOOT) feet[length.feet ? 'yes' : 'no'] += 1
  }
  return {
    divisions: sharesOf(divisions, DIVISIONS[context.unit ?? 'in'], USUAL_WEIGHS.divisions),
    of: sharesOf(of, OF, USUAL_WEIGHS.of),
    inFeet: feet.yes / (feet.yes + feet.no),
    marked: mark.yes / (mark.yes + mark.no),
  }
}

/** Share of a way to divide the unit. */
export const shareOfDivision = ({ divisions }: SheetHabit, division: string): number =>
  divisions.get(division) ?? RARE

const add = (counts: Map<string, number>, key: string, howMany: number): unknown =>
  counts.set(key, (counts.get(key) ?? 0) + howMany)

/** Shares of what was counted, drawn towards what is usual: the mean of a Dirichlet distribution. */
function sharesOf(
  counts: ReadonlyMap<string, number>,
  usual: Readonly<Record<string, number>>,
  weight: number,
): Map<string, number> {
  const all = [...counts.values()].reduce((sum, n) => sum + n, 0) + weight
  const keys = new Set([...Object.keys(usual), ...counts.keys()])
  return new Map(
    [...keys].map((key) => [key, ((counts.get(key) ?? 0) + weight * (usual[key] ?? RARE)) / all]),
  )
}
