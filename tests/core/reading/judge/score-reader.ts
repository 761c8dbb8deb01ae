import type { DrawnFigure } from '../drawn/draw-figure.ts'
import { type ExaminedFigure, figureSet } from '../drawn/figure-set.ts'

/** What a reader says of a picture. */
export interface ReadAnswer {
  /** In the notation of `formatFigure`; null: it makes no figure of it. */
  readonly text: string | null
  /** How sure it is of that, 0 to 1. */
  readonly probability: number
  /** Whether it would have it taken as a clear figure. */
  readonly clear: boolean
}

/** A reader under examination: it may use the true frame of the figure, and nothing else that is true. */
export type Reader = (picture: DrawnFigure) => Promise<ReadAnswer>

/** One question as it was answered. */
export interface MarkedAnswer {
  readonly level: string
  readonly lettering: string
  readonly kind: string
  readonly layout: string
  readonly lines: number
  readonly height: number
  readonly truth: string
  readonly answer: ReadAnswer
  readonly right: boolean
}

/** Right is only what is the same figure exactly, sign by sign in the one standard notation. */
export const marked = (figure: ExaminedFigure, answer: ReadAnswer): MarkedAnswer => ({
  level: figure.level,
  lettering: figure.lettering,
  kind: figure.kind,
  layout: figure.layout,
  lines: figure.lines,
  height: figure.height,
  truth: figure.text,
  answer,
  right: answer.text === figure.text,
})

/** A reader's answers to the figures of a seed's set. */
export async function scoreReader(reader: Reader, seed: number, size?: number): Promise<MarkedAnswer[]> {
  const answers: MarkedAnswer[] = []
  for await (const figure of figureSet(seed, size)) answers.push(marked(figure, await reader(figure)))
  return answers
}
