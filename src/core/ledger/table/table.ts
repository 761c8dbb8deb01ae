/** The table: all dimensions with adopted value, uncertainty, basis and status. Every export is made from it. */
import type { Basis, MappingKind, Unit } from '../../job/model/types.ts'

import type { Status } from '../adoption/adopt.ts'

export type { Status }

/** Lengths are in `unit`, areas in its square, angles in degrees. */
export interface Table {
  job: string
  unit: Unit
  coverage: 0.95
  rows: TableRow[]
  views: TableView[]
  relations: TableRelation[]
  cautions: string[]
}

/** One dimension. Lengths in the table's unit, areas in its square, angles in degrees. */
export interface TableRow {
  name: string
  label: string
  kind: string
  count: number
  /** null: no usable evidence, and `why` says so. */
  value: number | null
  /** Shop notation, e.g. `14 3/8"`. */
  written: string
  /** Standard uncertainty of the adopted value; 0 for a clear printed figure. */
  u: number
  /** Expanded uncertainty at 95 %, k · u. */
  U: number
  k: number
  /** Effective degrees of freedom; null = infinite. */
  dof: number | null
  basis: Basis | 'mean' | null
  status: Status
  /** One sentence a person can read. */
  why: string
  /** The tolerance stated for an adopted printed figure, shown beside it. */
  tolerance?: string
  /** Dimensions that a worked-out value rests on and that are disputed. */
  restsOn?: string[]
  evidence: TableEvidence[]
  /** Shares of variance, largest first, summing to 1; empty when u is 0. */
  budget: { source: string; share: number }[]
}

/** One piece of evidence of a row, in the units of the row. */
export interface TableEvidence {
  id: string
  basis: string
  value: number | null
  /** Standard uncertainty with which this evidence is compared: a printed figure counts as ± half its last graduation. */
  u: number
  /** The same, expanded at 95 %. */
  U: number
  written: string
  /** Whether the adopted value rests on this evidence. */
  governs: boolean
  /** Largest E_n of this evidence against any other usable evidence of the row. */
  en?: number
  /** Why it is not used, or what is wrong with it. */
  problem?: string
}

/**
 * How a view is calibrated: its parameters by name, with their standard uncertainties. Those that stretch are in the
 * table's unit per pixel, tilts without unit.
 */
export interface TableView {
  id: string
  name: string
  mapping: string
  parameters: Record<string, { value: number; u: number }>
  chi2: number | null
  dof: number
  p: number | null
  references: TableReference[]
  /** Drawn size over true size, as the title block states it and as found by the scan's dpi. */
  scale?: { stated: number | null; found: number | null }
  /** What a person should know before trusting this view. */
  problem?: string
  /** A simpler or richer mapping that AICc prefers, in a sentence. */
  suggestion?: string
  /** The mapping that `suggestion` is about. */
  suggests?: MappingKind
}

/** How a stated size fits the others of its view, in the table's unit. */
export interface TableReference {
  id: string
  /** Which size of a rectangle this row is about. */
  part?: 'width' | 'height' | 'squareness'
  stated: number
  fitted: number
  residual: number
  /** Normalised residual (Baarda); 0 when nothing checks this reference. */
  w: number
  suspect: boolean
  /** True when it alone explains a misfit and was therefore left out of the calibration. */
  setAside?: boolean
}

/** How far a relation is from holding: left less right, in the table's units, with its standard uncertainty. */
export interface TableRelation {
  id: string
  text: string
  misclosure: number
  u: number
  w: number
  holds: boolean
  problem?: string
}
