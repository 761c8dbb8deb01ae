import { formatFigure } from '../../../src/core/quantity/format/format-figure.ts'
import { parseFigure } from '../../../src/core/quantity/parse/parse-figure.ts'
import type { SimulatedFigure } from './hard-figures.ts'

/** Of so many that were said to be so likely, so many were right. */
export interface Band {
  n: number
  said: number
  right: number
}

export const bands = (): Band[] => Array.from({ length: 10 }, () => ({ n: 0, said: 0, right: 0 }))

/** The tenth that a probability lies in. */
export const bandOf = (all: Band[], probability: number): Band =>
  all[Math.min(9, Math.floor(probability * 10))] as Band

export function count(band: Band, said: number, right: boolean): void {
  band.n += 1
  band.said += said
  if (right) band.right += 1
}

/** The truth, in the notation of readings. */
export const truthOf = ({ truth, hard }: SimulatedFigure): string =>
  formatFigure(parseFigure(truth, hard.context))
