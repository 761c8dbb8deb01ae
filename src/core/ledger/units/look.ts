import type { Unit } from '../../job/model/types.ts'

export const FIGURES_AS = ['fractions', 'decimals'] as const

/** How exact inches are set: as the shop writes them, or in decimals. */
export type FiguresAs = (typeof FIGURES_AS)[number]

/** How a table is looked at; nothing of what it says depends on it. */
export interface Look {
  /** Of lengths and areas. A bare number in a figure means the job's own whatever this is. */
  unit: Unit
  figuresAs: FiguresAs
}

export const sameLook = (a: Look, b: Look): boolean => a.unit === b.unit && a.figuresAs === b.figuresAs
