import type { Unit } from '../../core/job/model/types.ts'

/** A kind of instrument: how its name begins, and what one of the kind shows at least. */
export interface UsualInstrument {
  readonly id: string
  readonly name: string
  readonly resolution: string
}

const KINDS: readonly (readonly [id: string, name: string, inches: string, millimetres: string])[] = [
  ['caliper', 'Vernier caliper', '0.001 in', '0.02 mm'],
  ['dial', 'Dial caliper', '0.001 in', '0.02 mm'],
  ['digital', 'Digital caliper', '0.0005 in', '0.01 mm'],
  ['micrometer', 'Micrometer', '0.001 in', '0.01 mm'],
  ['rule', 'Steel rule', '1/64 in', '0.5 mm'],
  ['tape', 'Tape', '1/16 in', '1 mm'],
  ['protractor', 'Bevel protractor', "5'", "5'"],
]

/** The kinds that a workshop has, each with the step that is usual for it. Common practice, no source. */
export const usualInstruments = (unit: Unit): UsualInstrument[] =>
  KINDS.map(([id, name, inches, millimetres]) => ({
    id,
    name,
    resolution: unit === 'in' ? inches : millimetres,
  }))
