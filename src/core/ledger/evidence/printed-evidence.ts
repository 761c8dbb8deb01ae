import { degrees, toRadians } from '../../geometry/angle-units.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Evidence, Unit } from '../../job/model/types.ts'
import { angleInRadians } from '../../quantity/angle.ts'
import type { Figure } from '../../quantity/figure.ts'
import { formatAngle } from '../../quantity/format/format-angle.ts'
import { formatArea } from '../../quantity/format/format-area.ts'
import { formatLength } from '../../quantity/format/format-length.ts'
import { graduationOf } from '../../quantity/graduation.ts'
import { lengthIn } from '../../quantity/length.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseCount } from '../../quantity/parse/parse-count.ts'
import { parseAngleTolerance } from '../../quantity/parse/parse-tolerance.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { KNOWN, newSource, type Source } from '../../uncertainty/source.ts'
import { exact, fromTerms } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { displayFactor } from '../units/display-units.ts'
import type { FiguresAs } from '../units/look.ts'
import { spreadOfCandidates } from './candidate-spread.ts'
import { asStated, type EvaluatedEvidence } from './evaluated-evidence.ts'
import { figureRemarks } from './figure-remarks.ts'
import { type LimitsOfSize, spreadOf } from './figure-spread.ts'
import type { Figures } from './figures.ts'
import { angleToleranceInWords, statedAreaLimits, statedLimits } from './stated-limits.ts'

type Printed = Extract<Evidence, { basis: 'printed' }>

/** What a printed figure is read with. */
interface PrintedContext {
  conventions: Conventions
  /** The unit that lengths are looked at in. */
  unit: Unit
  figuresAs: FiguresAs
  /** Those of its dimension. */
  figures: Figures
  /** The finest fraction in common use in the job; null when there is none. */
  finest: number | null
}

interface Read {
  value: number
  shown: number
  written: string
  graduation: number
  feet?: boolean
  tolerance?: string
  limits?: LimitsOfSize
  /** Of lengths and angles. */
  figure?: Figure
}

/** Standard deviation of a rectangular distribution of half-width 1. Source: JCGM 100:2008, 4.3.7. */
const RECTANGULAR = 1 / Math.sqrt(3)

/**
 * Reads a printed figure. Adopted, it is what it says; compared, it is uncertain by its tolerance when one is
 * stated, otherwise by half the last graduation (see `graduationOf`), both rectangular. One that says of itself that it
 * is loose (see `spreadOf`), or is hard to read, is as uncertain adopted as it is compared. MAX. and MIN. are no value:
 * others are compared with them on that side only.
 * @throws NotationError for a figure that can't be read
 */
export function printedEvidence(
  evidence: Printed,
  dimension: Dimension,
  context: PrintedContext,
): EvaluatedEvidence {
  const read = readPrinted(evidence, dimension, context)
  const { figure } = read
  const doubtful = evidence.legibility === 'doubtful'
  const spread = spreadOf(read, figure?.looseness)
  const compared = fromTerms(spread.middle, ...sourcesOf(evidence, dimension, read, spread.half, context))
  const remarks = figureRemarks(evidence, dimension, context.figures)
  const told = {
    ...(remarks.length === 0 ? {} : { remarks }),
    ...(figure?.notToScale ? { notToScale: true as const } : {}),
  }
  if (figure?.limit !== undefined) {
    const { limit } = figure
    const { written } = read
    return {
      evidence,
      adopted: null,
      compared,
      coverage: expand(compared),
      workOut: null,
      written: `${written} ${limit.toUpperCase()}.`,
      limit,
      usable: !doubtful,
      problem: doubtful ? HARD_TO_READ : reason('evidence.one-sided-limit', { limit, written }),
      ...told,
    }
  }
  const adopted = spread.exact && !doubtful ? exact(read.value) : compared
  // What lies to one side of its figure is another number than that.
  const asWritten = adopted.value === read.value
  return {
    evidence,
    adopted,
    compared,
    coverage: expand(compared),
    workOut: asStated(adopted, compared),
    ...(asWritten ? { shown: read.shown } : {}),
    written: asWritten ? read.written : '',
    feet: read.feet === true,
    ...(read.tolerance === undefined ? {} : { tolerance: read.tolerance }),
    usable: !doubtful,
    ...(doubtful ? { problem: HARD_TO_READ } : {}),
    ...told,
  }
}

const HARD_TO_READ = reason('evidence.hard-to-read')

/** What a figure is uncertain by: what it is written or made to and, of one that is hard to read, what else it may be. */
function sourcesOf(
  evidence: Printed,
  dimension: Dimension,
  read: Read,
  half: number,
  context: PrintedContext,
): [Source[], number[]] {
  const { text, legibility } = evidence
  const by = read.figure?.looseness?.toUpperCase() ?? (read.limits === undefined ? 'graduation' : 'tolerance')
  const sources: Source[] = []
  const contributions: number[] = []
  if (half > 0) {
    sources.push(newSource(`${by} of the figure ${text}`, KNOWN, 'rectangular'))
    contributions.push(half * RECTANGULAR)
  }
  const doubt =
    legibility === 'doubtful' ? spreadOfCandidates(evidence, dimension, read.value, context.conventions) : 0
  if (doubt > 0) {
    sources.push(newSource(`what else the figure ${text} may be`))
    contributions.push(doubt)
  }
  return [sources, contributions]
}

function readPrinted(evidence: Printed, dimension: Dimension, context: PrintedContext): Read {
  const { text } = evidence
  const { unit, figures } = context
  if (dimension.kind === 'area') {
    const { mm2, graduation, system } = parseArea(text)
    const value = Number(mm2)
    return {
      value,
      shown: value * displayFactor('area', unit),
      written: unit === system ? text : formatArea(value, { unit }),
      graduation: Number(graduation),
      ...(dimension.tolerance === undefined ? {} : statedAreaLimits(dimension.tolerance, unit)),
    }
  }
  // A bare number is how many, where a number is wanted.
  if (dimension.kind === 'count' && /^\s*\d+\s*$/.test(text)) return countRead(parseCount(text))
  const figure = figures.of(evidence)
  if (figure === undefined || figure instanceof NotationError)
    throw figure ?? new NotationError(text, 0, reason('evidence.not-read'))
  switch (dimension.kind) {
    case 'length':
      return readLengthFigure(figure, dimension, context)
    case 'angle':
      return readAngleFigure(figure, dimension)
    case 'count':
      if (figure.count === undefined) throw wrongKind(text, 'a count', 'count')
      return countRead(figure.count)
  }
}

function readLengthFigure(
  figure: Figure,
  dimension: Dimension,
  { conventions, unit, figuresAs, finest }: PrintedContext,
): Read {
  const { length, slope, text } = figure
  if (slope !== undefined) {
    const { rise, run } = slope
    throw new NotationError(text, 0, reason('evidence.slope-is-no-length', { text, rise, run }))
  }
  if (length === undefined) throw wrongKind(text, 'a length', 'length')
  const limits = statedLimits(figure, dimension, conventions, { unit, figuresAs })
  return {
    value: Number(length.mm),
    shown: lengthIn(length, unit),
    written: formatLength(length, { unit, decimals: figuresAs === 'decimals' }),
    graduation: graduationOf(length, finest),
    feet: length.feet,
    figure,
    ...limits,
  }
}

function readAngleFigure(figure: Figure, dimension: Dimension): Read {
  const { angle, slope } = figure
  if (slope !== undefined) {
    throw new NotationError(figure.text, 0, reason('evidence.slope-of-two-angles', { text: figure.text }))
  }
  if (angle === undefined) throw wrongKind(figure.text, 'an angle', 'angle')
  const stated = figure.reference || figure.limit ? undefined : dimension.tolerance
  const limits = figure.angleTolerance ?? (stated === undefined ? undefined : parseAngleTolerance(stated))
  return {
    value: angleInRadians(angle),
    shown: Number(angle.degrees),
    written: formatAngle(angle),
    graduation: toRadians(degrees(Number(angle.graduation))),
    figure,
    ...(limits === undefined
      ? {}
      : {
          limits: { plus: angleInRadians(limits.plus), minus: angleInRadians(limits.minus) },
          tolerance: angleToleranceInWords(limits),
        }),
  }
}

const wrongKind = (text: string, wanted: string, kind: QuantityKind): NotationError =>
  new NotationError(text, 0, reason('evidence.figure-of-another-kind', { kind, wanted }))

const countRead = (count: number): Read => ({
  value: count,
  shown: count,
  written: String(count),
  graduation: 0,
})
