import type { Job } from '../model/types.ts'
import type { BoxOfFigure } from './figure-box.ts'
import { type PrintedFigure, printedOn } from './printed-on.ts'

/** A figure of a sheet of which somebody has said what it is. */
export interface FigureSaid {
  box: BoxOfFigure
  text: string
}

/**
 * The figures of a sheet that are known: printed evidence that is clear, or that a person adopted by name although it is
 * doubtful. The newest first, by when it was entered or changed last; without a time, by its place in the job.
 * @param most figures at most
 */
export function figuresKnownOn(job: Job, sheet: string, most: number): FigureSaid[] {
  const known = printedOn(job, sheet).filter(isKnown)
  const newest = known.reverse().sort((a, b) => inOrder(momentOf(b), momentOf(a)))
  const figures = new Map<string, FigureSaid>()
  // One figure may be evidence of two dimensions, and is written once.
  for (const { box, piece } of newest)
    figures.set(JSON.stringify([box, piece.text]), { box, text: piece.text })
  return [...figures.values()].slice(0, most)
}

const isKnown = ({ dimension, piece }: PrintedFigure): boolean =>
  piece.legibility !== 'doubtful' || dimension.adopt === piece.id

/** Compared as it is written: what is stamped as it comes in is all of one time zone. Without a time, older than any. */
const momentOf = ({ piece }: PrintedFigure): string => piece.changedAt ?? piece.at ?? ''

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
