/** The types of the job document, as its schema says: what each field is stands there. */
import type { z } from 'zod'
import type { Point } from '../../geometry/frames.ts'
import type {
  candidateSchema,
  dimensionSchema,
  dismissedSchema,
  evidenceSchema,
  foundOnSchema,
  instrumentSchema,
  jobSchema,
  markSchema,
  noteSchema,
  personSchema,
  pointPickSchema,
  readFigureSchema,
  referenceSchema,
  relationSchema,
  repeatedBySchema,
  sheetSchema,
  viewSchema,
  wholePickSchema,
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

/**
 * A job document, as `readJob` gives it: the sheets of one set of drawings and what is known of them. What is read is
 * of version 2; a job that a program builds itself may call itself version 1, and leave out the marks' `picks`.
 */
export type Job = Known<z.output<typeof jobSchema>>
/** Somebody who works on the job. */
export type Person = Known<z.output<typeof personSchema>>
/** What readings on the part are taken with. */
export type Instrument = Known<z.output<typeof instrumentSchema>>
/** One sheet of the set, with the page of the scan that shows it. */
export type Sheet = Known<z.output<typeof sheetSchema>>
/** A part of a sheet that has one mapping to true size, and the references that determine it. */
export type View = Known<z.output<typeof viewSchema>>
/** A figured size of marks, by which a view is calibrated. */
export type Reference = Known<z.output<typeof referenceSchema>>
/** A point, line, circle or path picked on a sheet, pixels of the scan. */
export type Mark = Known<z.output<typeof markSchema>>
/** Which stroke a mark was found on, and where it was looked for. */
export type FoundOn = Known<z.output<typeof foundOnSchema>>
/** One pick of a point. */
export type PointPick = Known<z.output<typeof pointPickSchema>>
/** One pick of a line, circle or path, whole. */
export type WholePick = Known<z.output<typeof wholePickSchema>>
/** One pick of a mark: where, by whom, when, in which sitting, how and how surely. */
export type MarkPick = PointPick | WholePick
/** Who picked a mark again, when and how. */
export type RepeatedBy = Known<z.output<typeof repeatedBySchema>>
/** A named dimension with the evidence for its value. */
export type Dimension = Known<z.output<typeof dimensionSchema>>
/** One reason to give a dimension a value: printed, scaled, found on the part, or derived by a formula. */
export type Evidence = Known<z.output<typeof evidenceSchema>>
/** One way to read a printed figure that is not clear, with its probability. */
export type Candidate = Known<z.output<typeof candidateSchema>>
/** Strokes on a sheet of which a person said that they are no figure that is wanted. */
export type DismissedFigure = Known<z.output<typeof dismissedSchema>>
/** What a program read where a figure is printed. */
export type FigureRead = Known<z.output<typeof readFigureSchema>>
/** A relation that dimensions must fulfil. */
export type Relation = Known<z.output<typeof relationSchema>>
/** A remark on an outlined part of a sheet. */
export type Note = Known<z.output<typeof noteSchema>>

/** What a bare number means in a job: inches or millimetres. */
export type Unit = Job['unit']
/** The mappings of a view, from the simplest to the richest. */
export type MappingKind = View['mapping']
/** What a mark is. */
export type MarkKind = Mark['kind']
/** Which part of a stroke is meant. Left and right as one goes along it; see `core/imaging/result/stroke-types.ts`. */
export type StrokeReading = FoundOn['reading']
/** What a piece of evidence rests on. */
export type Basis = Evidence['basis']
/** What is measured of marks for scaled evidence. */
export type Measure = Extract<Evidence, { basis: 'scaled' }>['measure']
