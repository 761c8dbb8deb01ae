import { isSameFigure } from '../../core/job/figures/figure-box.ts'
import { printedOn } from '../../core/job/figures/printed-on.ts'
import type { DismissedFigure, Job } from '../../core/job/model/types.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'
import type { ToldFigure } from '../bench/told-readings.ts'

/** Something that was read on a sheet, and what became of it. */
export interface FigureOnSheet extends ToldFigure {
  /** Not looked at yet; evidence of a dimension by now; or no figure that is wanted. */
  state: 'open' | 'taken' | 'dismissed'
  /** Of one that was taken: the dimension, and the figure as it stands there. */
  taken?: { dimension: string; label: string; text: string }
  /** Of one that was dismissed: the box by which the sheet has it. */
  dismissed?: DismissedFigure['box']
}

/** How figures are gone through. */
export type FoundOrder = 'doubt' | 'place'

/** What was read on a sheet, each with what became of it in the job: so undo holds for that as well. */
export function figuresOnSheet(job: Job, sheet: string, found: readonly ToldFigure[]): FigureOnSheet[] {
  const taken = printedOn(job, sheet)
  const dismissed = job.sheets.find(({ id }) => id === sheet)?.dismissed ?? []
  return found.map((told): FigureOnSheet => {
    const { box: of } = told.reading
    const as = taken.find(({ box }) => isSameFigure(box, of))
    if (as !== undefined) {
      const { dimension, piece } = as
      const taken = { dimension: dimension.name, label: dimension.label, text: piece.text }
      return { ...told, state: 'taken', taken }
    }
    const gone = dismissed.find(({ box }) => isSameFigure(box, of))
    if (gone !== undefined) return { ...told, state: 'dismissed', dismissed: gone.box }
    return { ...told, state: 'open' }
  })
}

/** How a figure was told first: what is read again meanwhile does not move under the hand of whoever goes through it. */
const firstOf = ({ reading, first = reading }: FigureOnSheet): FigureReading => first

/** How far what was read is from a sure figure: the larger the sooner a person is to look at it. */
function doubtOf(figure: FigureOnSheet): number {
  const { probability, clear, text } = firstOf(figure)
  return 1 - probability + (clear ? 0 : 1) + (text === null ? 1 : 0)
}

const boxOf = (figure: FigureOnSheet): FigureReading['box'] => firstOf(figure).box

/** Figures whose middles are this near in height, as a share of the lower box, stand in one line. */
const IN_LINE = 0.6

/**
 * Figures in the order in which they are gone through: the most doubtful first, or as they stand on the sheet, from above
 * to below and from left to right.
 */
export function inOrder(figures: readonly FigureOnSheet[], order: FoundOrder): FigureOnSheet[] {
  // As they stand first, so that those of one doubt stay so.
  const placed = [...figures].sort((a, b) => boxOf(a)[1] - boxOf(b)[1] || a.id - b.id)
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
  return lines.map((line) => line.sort((a, b) => boxOf(a)[0] - boxOf(b)[0]))
}

const middleOf = (figure: FigureOnSheet): number => boxOf(figure)[1] + boxOf(figure)[3] / 2
const lowerOf = (a: FigureOnSheet, b: FigureOnSheet): number => Math.min(boxOf(a)[3], boxOf(b)[3])
