import type { Unit } from '../../core/job/model/types.ts'

/** What lengths are in, in full. */
export const UNIT_WORDS: Readonly<Record<Unit, string>> = { in: 'inches', mm: 'millimetres' }
