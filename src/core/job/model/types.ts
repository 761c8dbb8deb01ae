/** The types of the job document, as its schema says: what each field is stands there. */
import type { z } from 'zod'
import type { Point } from '../../geometry/frames.ts'
import type {
  candidateSchema,
  dimensionSchema,
  evidenceSchema,
  foundOnSchema,
  instrumentSchema,
  jobSchema,
  markSchema,
  noteSchema,
  personSchema,
  referenceSchema,
  relationSchema,
  repeatedBySchema,
  sheetSchema,
  viewSchema,
} from './schema.ts'

/** A type without the index signature that a loose object adds for fields that are not known. */
export type Known<T> = T extends string | number | boolean | Point
  ? T
  : T extends readonly unknown[]
    ? number extends T['length']
      ? Known<T[number]>[]
      : { [I in keyof T]: Known<T[I]> }
    : T extends object
      ? { [K in keyof T as string extends K ? never : K]: Known<T[K]> }
      : T

/** A length or angle as a person writes it, e.g. `14 3/8"`, `1'-2 3/8"`, `365.1 mm`, `47° 30'`. Exact: 3/8 stays 3/8. */
export type Written = string

export type Job = Known<z.output<typeof jobSchema>>
export type Person = Known<z.output<typeof personSchema>>
export type Instrument = Known<z.output<typeof instrumentSchema>>
export type Sheet = Known<z.output<typeof sheetSchema>>
export type View = Known<z.output<typeof viewSchema>>
export type Reference = Known<z.output<typeof referenceSchema>>
export type Mark = Known<z.output<typeof markSchema>>
export type FoundOn = Known<z.output<typeof foundOnSchema>>
export type RepeatedBy = Known<z.output<typeof repeatedBySchema>>
export type Dimension = Known<z.output<typeof dimensionSchema>>
export type Evidence = Known<z.output<typeof evidenceSchema>>
export type Candidate = Known<z.output<typeof candidateSchema>>
export type Relation = Known<z.output<typeof relationSchema>>
export type Note = Known<z.output<typeof noteSchema>>

export type Unit = Job['unit']
export type MappingKind = View['mapping']
export type MarkKind = Mark['kind']
/** Which part of a stroke is meant. Left and right as one goes along it; see `core/imaging/result/stroke-types.ts`. */
export type StrokeReading = FoundOn['reading']
export type Basis = Evidence['basis']
export type Measure = Extract<Evidence, { basis: 'scaled' }>['measure']
