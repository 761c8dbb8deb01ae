/**
 * The job document (format `scantling-job`, version 1): the shapes that other programs rely on.
 * Fields may be added; none may be renamed or re-meant. Unknown fields survive a round trip.
 */
import type { Pixel } from '../../geometry/frames.ts'
import type { GaugeStandard } from '../../quantity/gauges.ts'

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
  scan: {
    file: string
    sha256: string
    page: number
    width: number
    height: number
    dpi?: number
    /** Exif orientation, 2 to 8: how the file asks to be shown. The pixels are those stored. */
    orientation?: number
    /** Of a page that has no one picture of its own to give it pixels: dots per inch that it was drawn at. */
    drawnAt?: number
  }
  /** Degrees: direction of the sheet's horizontal edge, or of a line that is meant to be horizontal, in pixels. */
  straight?: number
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

/** Which part of a stroke is meant. Left and right as one goes along it; see `core/imaging/stroke.ts`. */
export type StrokeReading = 'centre' | 'left' | 'right'

/** What a mark was found from, so that it can be shown and found again. */
export interface FoundOn {
  as: 'point' | 'crossing' | 'line' | 'circle' | 'arc'
  reading: StrokeReading
  /** Where it was looked for: what the hand pointed at. */
  rough: Pixel[]
  /** Of the stroke, pixels. */
  width?: number
  /** Centres of profiles that were left out because they do not lie on it. */
  leftOut?: Pixel[]
}

/** Who made a repeated pick, and when. */
export interface RepeatedBy {
  by?: string
  at?: string
}

/** sigma: standard uncertainty of each picked coordinate, pixels; of a line or circle, of each of its pixels. */
export type Mark = {
  id: string
  sheet: string
  by?: string
  at?: string
  label?: string
  how: 'hand' | 'stroke'
  sigma: number
  /** Of `how: 'stroke'`. */
  stroke?: FoundOn
  /** Of each of `repeats`, in their order; none for those that do not say. */
  repeatedBy?: RepeatedBy[]
} /**
 * repeats: further independent picks of the same point. covariance: [xx, xy, yy], pixels², where the coordinates are
 * not alike, as on a stroke, which settles a point across itself only; sigma² is its largest eigenvalue then.
 */ & (
  | { kind: 'point'; pixel: Pixel; repeats?: Pixel[]; covariance?: [number, number, number] }
  /** repeats: further independent picks of the same line, circle or path, each whole. */
  | { kind: 'line'; pixels: Pixel[]; repeats?: Pixel[][] }
  | { kind: 'circle'; pixels: Pixel[]; repeats?: Pixel[][] }
  | { kind: 'path'; pixels: Pixel[]; closed?: boolean; repeats?: Pixel[][] }
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
  /** Name of the dimension, or id of the thing, that it is about. */
  about?: string
  /** The IRI of the Web Annotation that it was brought in from, when that was not made here. */
  annotation?: string
}
