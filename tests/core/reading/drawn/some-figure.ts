import type { Dice } from './dice.ts'
import { type PlannedFigure, planned } from './figure-parts.ts'

/** Kinds of figures by what a reader has to make out in them. */
export const FIGURE_KINDS = [
  'fraction',
  'feet and inches',
  'decimal',
  'radius',
  'diameter',
  'holes',
  'angle',
  'gauge',
  'tolerance',
  'whole number',
] as const
export type FigureKind = (typeof FIGURE_KINDS)[number]

/** How often each denominator is drawn on an inch sheet: common practice, no source. */
const DENOMINATORS = [2, 2, 4, 4, 4, 8, 8, 8, 8, 16, 16, 16, 16, 32, 32, 64] as const

function properFraction(d: Dice): string {
  const under = d.pick(DENOMINATORS)
  const over = 2 * d.whole(0, under / 2 - 1) + 1
  return `${over}/${under}`
}

const wholeInches = (d: Dice): number => (d.happens(0.7) ? d.whole(1, 12) : d.whole(13, 96))
const mixed = (d: Dice): string => `${wholeInches(d)} ${properFraction(d)}`
const inchMark = (d: Dice, share = 0.4): string => (d.happens(share) ? '"' : '')
const inchSize = (d: Dice): string => (d.happens(0.65) ? mixed(d) : properFraction(d))
const typical = (d: Dice): string => (d.happens(0.15) ? ' TYP.' : '')

function inchDecimal(d: Dice): string {
  const places = d.pick([2, 3, 3, 4] as const)
  const whole = d.happens(0.3) ? '' : String(d.whole(0, 14))
  return `${whole}.${String(d.whole(1, 10 ** places - 1)).padStart(places, '0')}`
}

/** A millimetre size with a decimal, which two figures at most follow: three would part thousands. */
function metricDecimal(d: Dice): string {
  const places = d.pick([1, 1, 2] as const)
  const sign = d.pick([',', '.'] as const)
  return `${d.whole(1, 480)}${sign}${String(d.whole(1, 10 ** places - 1)).padStart(places, '0')}`
}

function feet(d: Dice): string {
  const inches = d.whole(0, 11)
  const dash = d.pick(['-', '-', ' '] as const)
  if (d.happens(0.25)) return `${d.whole(1, 40)}'${dash}${inches}"`
  return `${d.whole(1, 24)}'${dash}${inches} ${properFraction(d)}${inchMark(d, 0.8)}`
}

function holes(d: Dice): string {
  const gap = d.happens(0.3) ? '\n' : ' '
  const size = d.happens(0.8) ? properFraction(d) : `${d.whole(1, 2)} ${properFraction(d)}`
  const count = d.whole(2, 24)
  return d.pick([
    () => `${count} HOLES${gap}DRILL ${size}`,
    () => `DRILL ${size}`,
    () => `${count} HOLES${gap}${size} DIA.`,
    () => `${count} HOLES`,
    () => `DRILL ${size}${gap}${count} HOLES`,
  ])()
}

function angle(d: Dice): string {
  const degrees = d.whole(1, 120)
  const form = d.uniform()
  if (form < 0.35) return `${degrees}°`
  if (form < 0.8) return `${degrees}° ${d.pick([5, 10, 12, 15, 20, 24, 30, 40, 45, 50] as const)}'`
  return `${degrees}.5°`
}

function tolerance(d: Dice): string {
  const form = d.uniform()
  if (form < 0.4) return `${mixed(d)} ±1/${d.pick([16, 32, 64] as const)}`
  const decimal = `${d.whole(0, 9)}.${String(d.whole(1, 999)).padStart(3, '0')}`
  const limit = () => `.00${d.whole(1, 9)}`
  return form < 0.75 ? `${decimal} ±${limit()}` : `${decimal} +${limit()} -${limit()}`
}

const WRITTEN: Readonly<Record<FigureKind, (d: Dice) => string>> = {
  fraction: (d) => `${inchSize(d)}${inchMark(d)}${d.happens(0.1) ? ' C.C.' : typical(d)}`,
  'feet and inches': feet,
  decimal: inchDecimal,
  radius: (d) => {
    const size = inchSize(d)
    return d.pick([`R ${size}`, `${size} R`, `${size}${inchMark(d)} RAD.`, `${size} R${typical(d)}`])
  },
  diameter: (d) => {
    const size = inchSize(d)
    return d.pick([
      `Ø ${size}`,
      `Ø${size}${inchMark(d)}`,
      `${size} DIA.`,
      `${size}${inchMark(d)} DIA.${typical(d)}`,
    ])
  },
  holes,
  angle,
  gauge: (d) => {
    const number = d.whole(8, 30)
    return d.pick([`No. ${number} GA`, `No. ${number} GA`, `${number} GA`, `#${number} GA`])
  },
  tolerance,
  'whole number': (d) => `${d.whole(2, 99)}${inchMark(d)}`,
}

/** A figure of a kind by chance, as it would stand on a working drawing. */
export function someFigure(kind: FigureKind, d: Dice): PlannedFigure {
  const metric = (kind === 'decimal' && d.happens(0.5)) || (kind === 'whole number' && d.happens(0.6))
  if (!metric) return withLimits(planned(WRITTEN[kind](d), 'in'))
  return planned(kind === 'decimal' ? metricDecimal(d) : String(d.whole(3, 2400)), 'mm')
}

const LIMITS = / (\+\S+) (-\S+)$/

/** Unlike limits stand one over the other. */
function withLimits(figure: PlannedFigure): PlannedFigure {
  const lines = figure.lines.map((parts) =>
    parts.flatMap((part) => {
      const found = part.kind === 'text' ? LIMITS.exec(part.text) : null
      if (part.kind !== 'text' || !found) return [part]
      const limits = { kind: 'limits' as const, upper: found[1] ?? '', lower: found[2] ?? '' }
      return [{ kind: 'text' as const, text: part.text.slice(0, found.index) }, limits]
    }),
  )
  return { ...figure, lines }
}
