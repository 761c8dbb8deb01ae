import type { FoundFigure } from '../../contract/readings.ts'
import type { DismissedFigure, Evidence, Job } from '../../core/job/model/types.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'

type Box = FigureReading['box']

/** Something that was read on a sheet, and what became of it. */
export interface FigureOnSheet {
  id: number
  reading: FigureReading
  /** Not looked at yet; evidence of a dimension by now; or no figure that is wanted. */
  state: 'open' | 'taken' | 'dismissed'
  /** Of one that was taken: the dimension, and the figure as it stands there. */
  taken?: { dimension: string; label: string; text: string }
  /** Of one that was dismissed: the box by which the sheet has it. */
  dismissed?: DismissedFigure['box']
}

/** How figures are gone through. */
export type FoundOrder = 'doubt' | 'place'

/** Boxes that have this share of both in common are round the same figure. */
const SAME = 0.5

/** What two boxes have in common, as a share of what both cover: 1 for the same box, 0 for two apart. */
export function sharedByBoxes(a: Box, b: Box): number {
  const across = Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0])
  const down = Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1])
  if (across <= 0 || down <= 0) return 0
  const both = across * down
  return both / (a[2] * a[3] + b[2] * b[3] - both)
}

const isSame = (a: Box, b: Box): boolean => sharedByBoxes(a, b) >= SAME

type Printed = Extract<Evidence, { basis: 'printed' }>

interface TakenFigure {
  box: Box
  taken: NonNullable<FigureOnSheet['taken']>
}

/** Printed evidence of a sheet that says where it stands. */
const takenOn = (job: Job, sheet: string): TakenFigure[] =>
  job.dimensions.flatMap(({ name, label, evidence }) =>
    evidence
      .filter((piece): piece is Printed => piece.basis === 'printed' && piece.withdrawn === undefined)
      .flatMap(({ sheet: on, box, text }): TakenFigure[] =>
        on === sheet && box !== undefined ? [{ box, taken: { dimension: name, label, text } }] : [],
      ),
  )

/** What was read on a sheet, each with what became of it in the job: so undo holds for that as well. */
export function figuresOnSheet(job: Job, sheet: string, found: readonly FoundFigure[]): FigureOnSheet[] {
  const taken = takenOn(job, sheet)
  const dismissed = job.sheets.find(({ id }) => id === sheet)?.dismissed ?? []
  return found.map(({ id, reading }): FigureOnSheet => {
    const as = taken.find(({ box }) => isSame(box, reading.box))
    if (as !== undefined) return { id, reading, state: 'taken', taken: as.taken }
    const gone = dismissed.find(({ box }) => isSame(box, reading.box))
    if (gone !== undefined) return { id, reading, state: 'dismissed', dismissed: gone.box }
    return { id, reading, state: 'open' }
  })
}

/** How far what was read is from a sure figure: the larger the sooner a person is to look at it. */
const doubtOf = ({ reading }: FigureOnSheet): number =>
  1 - reading.probability + (reading.clear ? 0 : 1) + (reading.text === null ? 1 : 0)

/** Figures whose middles are this near in height, as a share of the lower box, stand in one line. */
const IN_LINE = 0.6

/**
 * Figures in the order in which they are gone through: the most doubtful first, or as they stand on the sheet, from above
 * to below and from left to right.
 */
export function inOrder(figures: readonly FigureOnSheet[], order: FoundOrder): FigureOnSheet[] {
  // As they stand first, so that those of one doubt stay so.
  const placed = [...figures].sort((a, b) => a.reading.box[1] - b.reading.box[1] || a.id - b.id)
  if (order === 'doubt') return placed.sort((a, b) => doubtOf(b) - doubtOf(a))
  return linesOf(placed).flat()
}

/** Those that stand in one line together, each line from left to right. */
function linesOf(fromAbove: readonly FigureOnSheet[]): FigureOnSheet[][] {
  const lines: FigureOnSheet[][] = []
  for (const figure of fromAbove) {
    const line = lines.at(-1)
    const first = line?.[0]
    const inLine =
      first !== undefined && Math.abs(middleOf(first) - middleOf(figure)) < IN_LINE * lowerOf(first, figure)
    if (line !== undefined && inLine) line.push(figure)
    else lines.push([figure])
  }
  return lines.map((line) => line.sort((a, b) => a.reading.box[0] - b.reading.box[0]))
}

const middleOf = ({ reading: { box } }: FigureOnSheet): number => box[1] + box[3] / 2
const lowerOf = (a: FigureOnSheet, b: FigureOnSheet): number => Math.min(a.reading.box[3], b.reading.box[3])
