import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import type { Figure } from '../../quantity/figure.ts'
import type { GaugeStandard } from '../../quantity/gauges.ts'
import { type Length, partsOfAnInch } from '../../quantity/length.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { parseFigure } from '../../quantity/parse/parse-figure.ts'

/** The printed figures of a dimension, read. */
export interface Figures {
  /** What is wrong with it, where it can't be read. Figures of areas are not among them. */
  of(evidence: Evidence): Figure | NotationError | undefined
  /** The fractions of an inch that they are written to: 16 for sixteenths. */
  fractions: readonly number[]
  /** Those that are written in feet, mm. */
  inFeet: readonly number[]
  /** The standard that a sheet gauge among them was taken for, where nothing says which it is. */
  gaugeAssumed?: GaugeStandard
}

/** Divisions of an inch that rules and drawings of the trade have. */
const BINARY = [2, 4, 8, 16, 32, 64]

/** Reads every printed figure of a dimension. */
export function readFigures({ kind, evidence }: Dimension, conventions: Conventions): Figures {
  const read = new Map<Evidence, Figure | NotationError>()
  const fractions: number[] = []
  const inFeet: number[] = []
  let gaugeAssumed: GaugeStandard | undefined
  if (kind === 'area') return { of: () => undefined, fractions, inFeet }
  const context = lengthContext(conventions)
  for (const one of evidence) {
    if (one.basis !== 'printed') continue
    const figure = figureOrError(one.text, context)
    read.set(one, figure)
    // What was withdrawn says nothing of how the job writes its figures.
    if (one.withdrawn !== undefined || figure instanceof NotationError) continue
    if (figure.gauge?.assumed) gaugeAssumed ??= figure.gauge.standard
    if (figure.length === undefined || figure.gauge !== undefined) continue
    if (figure.length.feet) inFeet.push(Number(figure.length.mm))
    const parts = partsOfAnInch(figure.length)
    if (parts !== null && BINARY.includes(parts)) fractions.push(parts)
  }
  return { of: (one) => read.get(one), fractions, inFeet, ...(gaugeAssumed && { gaugeAssumed }) }
}

/** One figure in ten makes a fraction common; a single finer one does not change how the others are meant. */
const COMMON = 0.1

/** The finest of all fractions in a job that is in common use: 16 for sixteenths; null when there are none. */
export function finestInUse(fractions: readonly number[]): number | null {
  const finestFirst = [...fractions].sort((a, b) => b - a)
  return finestFirst[Math.max(0, Math.ceil(COMMON * finestFirst.length) - 1)] ?? null
}

/** What a rule is graduated to at least, parts of an inch. Common practice, no source. */
const COARSEST = 16

/**
 * The graduation a figure is written to, mm. Fractions are written reduced (6/16 as 3/8, 16/16 as 1), so a fraction or
 * whole number of inches counts as written to the finest fraction in common use in the job, sixteenths at least: before
 * there is any fraction in the job, it counts as written to these.
 *
 * @param finest as `finestInUse` gives it
 */
export function graduationOf(length: Length, finest: number | null): number {
  const own = Number(length.graduation)
  const parts = partsOfAnInch(length)
  const credited = Math.max(finest ?? COARSEST, COARSEST)
  // A third or a tenth of an inch is no reduced fraction of a rule.
  if (parts === null || parts > credited || (parts > 1 && !BINARY.includes(parts))) return own
  return 25.4 / credited
}

function figureOrError(text: string, context: Parameters<typeof parseFigure>[1]): Figure | NotationError {
  try {
    return parseFigure(text, context)
  } catch (error) {
    if (error instanceof NotationError) return error
    throw error
  }
}
