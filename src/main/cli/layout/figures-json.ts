import type { Unit } from '../../../core/job/model/types.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { valueIn } from './stated-figure.ts'

/** Figures as JSON: what was read of each, and how surely; lengths in `unit`. */
export function figuresJson(readings: readonly FigureReading[], unit: Unit): string {
  const figures = readings.map((reading) => {
    const { box, angle, text, kind, clear, probability, alternatives } = reading
    return { box, angle, text, ...valueIn(unit, reading), kind, clear, probability, alternatives }
  })
  return `${JSON.stringify({ figures }, null, 2)}\n`
}
