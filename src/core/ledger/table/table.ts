/**
 * The types of the table, as its schema says: what each field is stands there. Every export is made from it.
 * Lengths are in the table's `unit`, areas in its square, angles in degrees.
 */
import type { z } from 'zod'
import type {
  tableAlternativeSchema,
  tableCandidateSchema,
  tableClosingSchema,
  tableDoubtfulSchema,
  tableEvidenceSchema,
  tableReferenceSchema,
  tableRelationSchema,
  tableRowSchema,
  tableSchema,
  tableSourceSchema,
  tableViewSchema,
} from './table-schema.ts'

/** All dimensions of a job with adopted value, uncertainty, basis and status. */
export type Table = z.output<typeof tableSchema>
/** One dimension. Lengths in the table's unit, areas in its square, angles in degrees. */
export type TableRow = z.output<typeof tableRowSchema>
/** One piece of evidence of a row, in the units of the row. */
export type TableEvidence = z.output<typeof tableEvidenceSchema>
/**
 * How a view is calibrated: its parameters by name, with their standard uncertainties. Those that stretch are in the
 * table's unit per pixel, tilts without unit.
 */
export type TableView = z.output<typeof tableViewSchema>
/** How a stated size fits the others of its view, in the table's unit. */
export type TableReference = z.output<typeof tableReferenceSchema>
/** Figured sizes of a view that close on themselves, in the table's unit. */
export type TableClosing = z.output<typeof tableClosingSchema>
/** Figured sizes of a view of which it may be that they are wrong and the rest right; scales in the table's unit per pixel. */
export type TableAlternative = z.output<typeof tableAlternativeSchema>
/** How far a relation is from holding: left less right, in the table's units, with its standard uncertainty. */
export type TableRelation = z.output<typeof tableRelationSchema>
/** A printed figure that is hard to read, with all that it could be, in the units of its row. */
export type TableDoubtful = z.output<typeof tableDoubtfulSchema>
/** What such a figure could be, and what would follow for the sums that it stands in. */
export type TableCandidate = z.output<typeof tableCandidateSchema>
/** What makes rows uncertain; rows that have the same one are correlated by it. */
export type TableSource = z.output<typeof tableSourceSchema>
/** How the evidence of a row stands: two or more agree; only one; two or more do not; none usable. */
export type Status = TableRow['status']
