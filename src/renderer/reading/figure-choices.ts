import { basisWord } from '../../core/job/ids/basis-word.ts'
import { lengthContext } from '../../core/job/model/length-context.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { TableEvidence, TableRow } from '../../core/ledger/table/table.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'
import type { ValueBeside } from '../../core/reading/ranking/beside-scale.ts'
import { type RankedFigure, rankFigures } from '../../core/reading/ranking/rank-figures.ts'
import { inWords, reason } from '../words/window-words.ts'

/** A figure that strokes could be. */
export interface FigureChoice {
  text: string
  /** By all that is known. */
  probability: number
  /** What each thing that is known says of it, in a few words. */
  says: readonly string[]
}

/** What a figure could be, likeliest first. */
export interface FigureChoices {
  choices: readonly FigureChoice[]
  /** What it was weighed by beside the strokes; empty: by nothing. */
  besides: readonly string[]
}

interface WeighedBy {
  job: Job
  /** The row of the dimension that it would be a figure of; undefined for a new one. */
  row: TableRow | undefined
  /** That the row is in. */
  unit: Unit
  /** Other figures of the sheet, as they are written. */
  written: readonly string[]
}

/** More than these nobody goes through: the figure is written instead. */
const MOST = 9
/** What is less likely than this is not offered. */
const LEAST = 0.001
/** But what has so large a share of the strokes is. */
const SEEN = 0.02

/** Pieces of a row that are no figure on paper, each a witness of its own. */
function piecesBeside(row: TableRow | undefined): TableEvidence[] {
  const pieces = row?.evidence.filter(
    ({ basis, value, u, problem }) => basis !== 'printed' && value !== null && u > 0 && problem === undefined,
  )
  const ids = new Set(pieces?.map(({ id }) => id))
  return (pieces ?? []).filter(({ countsWith }) => countsWith === undefined || !ids.delete(countsWith))
}

/** How many millimetres or radians one of the table's own is; areas are not figured. */
const scaleOf = (kind: QuantityKind, unit: Unit): number =>
  kind === 'length' && unit === 'in' ? 25.4 : kind === 'angle' ? Math.PI / 180 : 1

/** What strokes could be, by themselves or weighed by what is known of the dimension that they would be a figure of. */
export function figureChoices(reading: FigureReading, by: WeighedBy): FigureChoices {
  const pieces = piecesBeside(by.row)
  const weighed =
    by.row === undefined || pieces.length === 0 ? null : ranked(reading, by.row.kind, pieces, by)
  if (weighed !== null) return weighed
  const own = reading.text === null ? [] : [{ text: reading.text, probability: reading.probability }]
  const all = [...own, ...reading.alternatives].filter(({ probability }) => probability >= LEAST)
  const most = Math.max(...all.map(({ probability }) => probability))
  const choices = all.slice(0, MOST).map(({ text, probability }) => ({
    text,
    probability,
    says: [inWords(reason('choice.strokes', { said: saidByShare(probability, probability / most) }))],
  }))
  return { choices, besides: [] }
}

function ranked(
  { lattice }: FigureReading,
  kind: QuantityKind,
  pieces: readonly TableEvidence[],
  { job, unit, written }: WeighedBy,
): FigureChoices | null {
  if (lattice.slots.length === 0 || kind === 'area') return null
  const scale = scaleOf(kind, unit)
  const scaled = pieces.map(({ value, u }): ValueBeside => ({ value: (value ?? 0) * scale, u: u * scale }))
  const { figures } = rankFigures({
    seen: lattice,
    scaled,
    kind,
    figures: written,
    context: lengthContext(job),
  })
  const sum = figures.reduce((all, { why }) => all + Math.exp(why.strokes), 0)
  // Also what the strokes allow and all else speaks against: so that it is seen why it is not likely.
  const offered = figures
    .filter(({ probability, why }) => probability >= LEAST || Math.exp(why.strokes) >= SEEN * sum)
    .slice(0, MOST)
  if (offered.length === 0) return null
  const best = (of: 'strokes' | 'habit'): number => Math.max(...offered.map(({ why }) => why[of]))
  const most = { strokes: best('strokes'), habit: best('habit') }
  const choices = offered.map(
    (figure): FigureChoice => ({
      text: figure.text,
      probability: figure.probability,
      says: [
        inWords(
          reason('choice.strokes', {
            said: saidByShare(
              Math.exp(figure.why.strokes) / sum,
              Math.exp(figure.why.strokes - most.strokes),
            ),
          }),
        ),
        ...pieces.map((piece, i) => besideInWords(figure, piece, scaled[i] as ValueBeside, { kind, unit })),
        ...habitInWords(figure.why.habit - most.habit),
      ],
    }),
  )
  return { choices, besides: pieces.map(({ basis }) => basisWord(basis)) }
}

/** @param share of all by the strokes; of: of the one that they say the most for */
function saidByShare(share: number, of: number): 'yes' | 'maybe' | 'hardly' | 'no' {
  if (share >= 0.5) return 'yes'
  if (of >= 0.2) return 'maybe'
  return of >= 0.01 ? 'hardly' : 'no'
}

/** Written so a seventh as often as what is usual here, and less than a fiftieth. */
const SELDOM = Math.log(1 / 7)
const HARDLY = Math.log(1 / 50)

function habitInWords(behind: number): string[] {
  if (behind > SELDOM) return []
  return [inWords(reason('choice.habit', { said: behind > HARDLY ? 'maybe' : 'hardly' }))]
}

/** Within twice its standard uncertainty a piece agrees, within three times it just about does. */
function besideInWords(
  { value }: RankedFigure,
  { basis }: TableEvidence,
  beside: ValueBeside,
  { kind, unit }: { kind: QuantityKind; unit: Unit },
): string {
  const off = Math.abs((value ?? Number.POSITIVE_INFINITY) - beside.value)
  const parts = { basis: basisWord(basis), off: sizeOf(off / scaleOf(kind, unit), kind, unit) }
  const times = off / beside.u
  if (times <= 2) return inWords(reason('choice.agrees', parts))
  return inWords(times <= 3 ? reason('choice.just-agrees', parts) : reason('choice.disagrees', parts))
}

function sizeOf(size: number, kind: QuantityKind, unit: Unit): string {
  if (kind === 'angle') return `${size.toFixed(2)}°`
  if (kind === 'count') return String(Math.round(size))
  return unit === 'in' ? `${size.toFixed(3)}"` : `${size.toFixed(2)} mm`
}
