import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import type { Figure } from '../../quantity/figure.ts'
import type { GaugeStandard } from '../../quantity/gauges.ts'
import { fractionOf } from '../../quantity/graduation.ts'
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
    fractions.push(...fractionOf(figure.length))
  }
  return { of: (one) => read.get(one), fractions, inFeet, ...(gaugeAssumed && { gaugeAssumed }) }
}

function figureOrError(text: string, context: Parameters<typeof parseFigure>[1]): Figure | NotationError {
  try {
    return parseFigure(text, context)
  } catch (error) {
    if (error instanceof NotationError) return error
    throw error
  }
}
