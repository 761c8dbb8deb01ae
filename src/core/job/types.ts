/**
 * The job document (format `scantling-job`, version 1): the shapes that other programs rely on.
 * Fields may be added; none may be renamed or re-meant. Unknown fields survive a round trip.
 */
import type { Pixel } from '../geometry/frames.ts'
import type { GaugeStandard } from '../quantity/gauges.ts'

/** A length or angle as a person writes it, e.g. `14 3/8"`, `1'-2 3/8"`, `365.1 mm`, `47° 30'`. Exact: 3/8 stays 3/8. */
export type Written = string

export type Unit = 'in' | 'mm'

export interface Job {
  format: 'scantling-job'
  version: 1
  /** Number of the last edit that is contained in this document; journal lines up to it are already applied. */
  edition?: number
  title: string
  /** What a bare number in a figure means, and how the table is shown. */
  unit: Unit
  /** General tolerance of the sheet, when it states one. */
  tolerance?: Written
  /** Which standard a sheet-gauge number such as `No. 16 GA` refers to; default the US Standard of 1893. */
  gauge?: GaugeStandard
  people: Person[]
  instruments: Instrument[]
  sheets: Sheet[]
  views: View[]
  marks: Mark[]
  dimensions: Dimension[]
  relations: Relation[]
  notes: Note[]
}

export interface Person {
  id: string
  name: string
  role?: string
}

export interface Instrument {
  id: string
  name: string
  resolution: Written
  /** Maximum permissible error, ±. */
  limit?: Written
  note?: string
}

export interface Sheet {
  id: string
  title: string
  /** Dublin Core terms. */
  record: {
    identifier?: string
    creator?: string
    date?: string
    source?: string
    rights?: string
    description?: string
  }
  /** file: name below the folder `scans`. page: of the scan file, the first is 1. width, height: pixels. */
  scan: { file: string; sha256: string; page: number; width: number; height: number; dpi?: number }
  /** Standard uncertainty of where a drawn feature lies, on paper; default 0.13 mm. */
  draughting?: Written
}

export type MappingKind = 'uniform' | 'two-axis' | 'affine' | 'projective'

export interface View {
  id: string
  sheet: string
  name: string
  outline?: Pixel[]
  /** Drawn size / true size as the title block states it, e.g. 0.25 for 3" = 1'-0". */
  drawnScale?: number
  mapping: MappingKind
  /** Degrees: direction of the sheet's horizontal edge in pixels (x right, y down), for 'two-axis'; default 0. */
  grain?: number
  references: Reference[]
}

/** u: standard uncertainty of the stated size; default 0. */
export type Reference = { id: string; u?: Written } & (
  | { kind: 'distance'; marks: [string, string]; size: Written }
  | { kind: 'diameter'; marks: [string]; size: Written }
  /** Corners in order round the rectangle, first side = width. */
  | { kind: 'rectangle'; marks: [string, string, string, string]; width: Written; height: Written }
)

/** sigma: standard uncertainty of each picked coordinate, pixels. */
export type Mark = {
  id: string
  sheet: string
  by?: string
  at?: string
  label?: string
  how: 'hand' | 'stroke'
  sigma: number
} & (
  | { kind: 'point'; pixel: Pixel; repeats?: Pixel[] }
  | { kind: 'line'; pixels: Pixel[] }
  | { kind: 'circle'; pixels: Pixel[] }
  | { kind: 'path'; pixels: Pixel[]; closed?: boolean }
)

export type MarkKind = Mark['kind']

export type DimensionKind = 'length' | 'angle' | 'area' | 'count'

export interface Dimension {
  /** A valid identifier, unique: what formulas and calculators call it. */
  name: string
  label: string
  kind: DimensionKind
  /** How many alike per assembly. */
  count?: number
  tolerance?: Written
  /** A rule ('printed' | 'scaled' | 'found' | 'derived' | 'mean') or the id of one piece of evidence. */
  adopt?: string
  evidence: Evidence[]
  note?: string
}

export type Basis = 'printed' | 'scaled' | 'found' | 'derived'

export interface Candidate {
  text: Written
  probability: number
}

/** withdrawn: why it no longer counts; evidence is never deleted. */
export type Evidence = { id: string; by?: string; at?: string; note?: string; withdrawn?: string } & (
  | {
      basis: 'printed'
      text: Written
      sheet?: string
      /** x, y, width, height in pixels. */
      box?: [x: number, y: number, width: number, height: number]
      legibility?: 'clear' | 'doubtful'
      candidates?: Candidate[]
    }
  | { basis: 'scaled'; view: string; measure: Measure; marks: string[] }
  | { basis: 'found'; readings: Written[]; instrument?: string; worn?: { loss: Written; u: Written } }
  /** A formula over dimension names, e.g. `pi * (barrel_od - sheet_thickness)`. */
  | { basis: 'derived'; formula: string }
)

export type Measure =
  | 'distance' // point, point
  | 'spacing' // line, line  or  line, point: perpendicular distance
  | 'diameter' // circle
  | 'radius' // circle
  | 'centres' // circle, circle
  | 'angle' // line, line: 0°..180°, between the directions in which they were picked
  | 'run' // path: its length
  | 'area' // closed path

export interface Relation {
  id: string
  /** `overall = neck + barrel + rim` */
  text: string
  /** What it may miss by, standard. */
  u?: Written
}

export interface Note {
  id: string
  sheet: string
  outline: Pixel[]
  text: string
  by?: string
  at?: string
  about?: string
}
