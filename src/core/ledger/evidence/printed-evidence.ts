import { degrees, toRadians } from '../../geometry/angle-units.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Evidence, Unit } from '../../job/model/types.ts'
import { angleInRadians } from '../../quantity/angle.ts'
import type { Figure } from '../../quantity/figure.ts'
import { formatAngle } from '../../quantity/format/format-angle.ts'
import { formatArea } from '../../quantity/format/format-area.ts'
import { formatLength } from '../../quantity/format/format-length.ts'
import { type Length, lengthIn } from '../../quantity/length.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseCount } from '../../quantity/parse/parse-count.ts'
import { parseAngleTolerance, parseTolerance } from '../../quantity/parse/parse-tolerance.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { exact, measured } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { displayFactor } from '../units/display-units.ts'
import type { FiguresAs } from '../units/look.ts'
import { asStated, type EvaluatedEvidence } from './evaluated-evidence.ts'
import { type Figures, graduationOf } from './figures.ts'

type Printed = Extract<Evidence, { basis: 'printed' }>

/** Limits above and below the stated size, mm or radians. */
interface Limits {
  plus: number
  minus: number
}

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
  limits?: Limits
}

/** Standard deviation of a rectangular distribution of half-width 1. Source: JCGM 100:2008, 4.3.7. */
const RECTANGULAR = 1 / Math.sqrt(3)

/**
 * Reads a printed figure. Adopted, it is what it says; compared, it is uncertain by its tolerance when one is
 * stated, otherwise by half the last graduation (see `graduationOf`), both rectangular.
 * @throws NotationError for a figure that can't be read
 */
export function printedEvidence(
  evidence: Printed,
  dimension: Dimension,
  context: PrintedContext,
): EvaluatedEvidence {
  const read = readPrinted(evidence, dimension, context)
  const limits = read.limits
  const half = limits === undefined ? read.graduation / 2 : (limits.plus + limits.minus) / 2
  const middle = limits === undefined ? read.value : read.value + (limits.plus - limits.minus) / 2
  const doubtful = evidence.legibility === 'doubtful'
  const adopted = exact(read.value)
  const compared = measured(
    middle,
    half * RECTANGULAR,
    limits === undefined
      ? `graduation of the figure ${evidence.text}`
      : `tolerance of the figure ${evidence.text}`,
    KNOWN,
    'rectangular',
  )
  return {
    evidence,
    adopted,
    compared,
    coverage: expand(compared),
    workOut: asStated(adopted, compared),
    shown: read.shown,
    written: read.written,
    feet: read.feet === true,
    ...(read.tolerance === undefined ? {} : { tolerance: read.tolerance }),
    usable: !doubtful,
    ...(doubtful ? { problem: reason('evidence.hard-to-read') } : {}),
  }
}

function readPrinted(evidence: Printed, dimension: Dimension, context: PrintedContext): Read {
  const { text } = evidence
  const { conventions, unit, figures } = context
  if (dimension.kind === 'area') {
    const { mm2, graduation } = parseArea(text)
    const value = Number(mm2)
    return {
      value,
      shown: value * displayFactor('area', unit),
      written: unit === conventions.unit ? text : formatArea(value, { unit }),
      graduation: Number(graduation),
      ...(dimension.tolerance === undefined ? {} : areaTolerance(dimension.tolerance, context)),
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
  const { length } = figure
  if (length === undefined) throw wrongKind(figure.text, 'a length', 'length')
  const limits = figure.tolerance ?? statedTolerance(figure, dimension, conventions)
  const mm = Number(length.mm)
  return {
    value: mm,
    shown: lengthIn(length, unit),
    written: formatLength(length, { unit, decimals: figuresAs === 'decimals' }),
    graduation: graduationOf(length, finest),
    feet: length.feet,
    ...(limits === undefined
      ? {}
      : {
          limits: { plus: Number(limits.plus.mm), minus: Number(limits.minus.mm) },
          tolerance: toleranceInWords(limits, unit, figuresAs),
        }),
  }
}

function readAngleFigure(figure: Figure, dimension: Dimension): Read {
  const { angle } = figure
  if (angle === undefined) throw wrongKind(figure.text, 'an angle', 'angle')
  const limits =
    figure.angleTolerance ??
    (dimension.tolerance === undefined ? undefined : parseAngleTolerance(dimension.tolerance))
  return {
    value: angleInRadians(angle),
    shown: Number(angle.degrees),
    written: formatAngle(angle),
    graduation: toRadians(degrees(Number(angle.graduation))),
    ...(limits === undefined
      ? {}
      : { limits: { plus: angleInRadians(limits.plus), minus: angleInRadians(limits.minus) } }),
  }
}

/** The general tolerance of a sheet is for what is made to it, not for the sheet metal as it is bought. */
function statedTolerance(
  figure: Figure,
  dimension: Dimension,
  conventions: Conventions,
): { plus: Length; minus: Length } | undefined {
  const text = dimension.tolerance ?? (figure.gauge === undefined ? conventions.tolerance : undefined)
  return text === undefined ? undefined : parseTolerance(text, { unit: conventions.unit })
}

const wrongKind = (text: string, wanted: string, kind: QuantityKind): NotationError =>
  new NotationError(text, 0, reason('evidence.figure-of-another-kind', { kind, wanted }))

/** `±1/32"`, or `+0" −1/64"` where the limits differ. */
function toleranceInWords(
  { plus, minus }: { plus: Length; minus: Length },
  unit: Unit,
  figuresAs: FiguresAs,
): string {
  const format = { unit, decimals: figuresAs === 'decimals' }
  const [above, below] = [formatLength(plus, format), formatLength(minus, format)]
  return above === below ? `±${above}` : `+${above} −${below}`
}

const countRead = (count: number): Read => ({
  value: count,
  shown: count,
  written: String(count),
  graduation: 0,
})

function areaTolerance(
  text: string,
  { conventions, unit }: PrintedContext,
): Pick<Read, 'limits' | 'tolerance'> {
  const mm2 = Number(parseArea(text).mm2)
  const written = unit === conventions.unit ? text : formatArea(mm2, { unit })
  return { limits: { plus: mm2, minus: mm2 }, tolerance: `±${written}` }
}
