/**
 * The public face of core: what programs outside use. Lengths are in millimetres, areas in square millimetres, angles in
 * radians, places on a scan in pixels, wherever nothing else is said; what is declared says the rest.
 */

// Places and angles, which carry their frame and their unit in their type.

export { type Degrees, degrees, type Radians, radians, toDegrees, toRadians } from './geometry/angle-units.ts'
export {
  type Framed,
  type Paper,
  type Pixel,
  type Point,
  type PointsOf,
  paper,
  pixel,
  pointLike,
  type Screen,
  screen,
  type True,
  truePoint,
  type Vector,
  vectorLike,
} from './geometry/frames.ts'

// Geometry: fits and figures, in any frame.

export { algebraicCircle } from './geometry/algebraic-circle.ts'
export { distanceBetween } from './geometry/distance-between.ts'
export { type CircleFit, fitCircle } from './geometry/fit-circle.ts'
export { fitLine, type LineFit } from './geometry/fit-line.ts'
export { GeometryError } from './geometry/geometry-error.ts'
export { crossesItself, type Measured, pathLength, polygonArea } from './geometry/polygon.ts'
export { type RegressionLine, regressionLine } from './geometry/regression-line.ts'

// Strokes in a grey window of a scan, and what part of the scan each search looks at.

export {
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  type GreyPicture,
  type GreyWindow,
  type Ink,
  LARGEST_WINDOW,
  type NoStroke,
  type OutOfRound,
  outOfRound,
  type PointOptions,
  type RoundOptions,
  type SearchOptions,
  type SearchWindow,
  type StrokeCircle,
  type StrokeCrossing,
  type StrokeLine,
  type StrokePoint,
  searchWindow,
  settledInk,
  type WindowBox,
} from './imaging/index.ts'

// Uncertain numbers, their coverage and their propagation.

export {
  type AdjustedObservations,
  adjustObservations,
  type Equations,
  type Unadjusted,
} from './uncertainty/adjust-observations.ts'
export { type Adjustment, adjust } from './uncertainty/adjustment.ts'
export { type Coverage, expand } from './uncertainty/coverage.ts'
export {
  compareWithFirstOrder,
  type MonteCarloResult,
  monteCarlo,
  type Verdict,
} from './uncertainty/monte-carlo.ts'
export { exact, measured, type Uncertain } from './uncertainty/uncertain.ts'

// Mappings from pixels to true size and back, and their calibration from figured sizes.

export { type Calibration, calibrate } from './calibration/calibrate.ts'
export { CalibrationError } from './calibration/calibration-error.ts'
export {
  diameterReference,
  distanceReference,
  type ReferencePart,
  rectangleReference,
  type StatedSize,
} from './calibration/reference.ts'
export type { ReferenceCheck } from './calibration/reference-checks.ts'
export type { Mapped, Mapping } from './mapping/mapping.ts'
export { MAPPINGS } from './mapping/mappings.ts'
export type { Parameter, ParameterRole } from './mapping/parameter.ts'
export { type ViewFrame, viewFrame } from './mapping/view-frame.ts'
export type { ViewMapping } from './mapping/view-mapping.ts'

// Marks as features, measured through a calibration.

export { type Feature, featureOf } from './measuring/features/feature-of-mark.ts'
export { measureFeatures } from './measuring/measure-features.ts'

// Quantities as they are written on drawings: read exactly, and written.

export type { Angle } from './quantity/angle.ts'
export type {
  Fastener,
  Figure,
  FigureOf,
  Fit,
  Looseness,
  Slope,
  Thread,
  Tolerance,
} from './quantity/figure.ts'
export { type AngleFormat, formatAngle } from './quantity/format/format-angle.ts'
export { formatArea } from './quantity/format/format-area.ts'
export { formatDrawnScale } from './quantity/format/format-drawn-scale.ts'
export { formatFigure } from './quantity/format/format-figure.ts'
export { formatLength, type LengthFormat } from './quantity/format/format-length.ts'
export type { Length, LengthUnit } from './quantity/length.ts'
export { NotationError } from './quantity/notation/notation-error.ts'
export { type AngleContext, parseAngle } from './quantity/parse/parse-angle.ts'
export { type Area, parseArea } from './quantity/parse/parse-area.ts'
export { parseDrawnScale } from './quantity/parse/parse-drawn-scale.ts'
export { parseFigure } from './quantity/parse/parse-figure.ts'
export { type LengthContext, parseLength } from './quantity/parse/parse-length.ts'
export { parseTolerance } from './quantity/parse/parse-tolerance.ts'
export type { QuantityKind, QuantityKind as DimensionKind } from './quantity/quantity-kind.ts'

// Figures that are hard to read: what the strokes could be, and how likely each figure is.

export type { BoxToRead } from './reading/box/box-to-read.ts'
export { type GlyphReader, glyphReader } from './reading/box/glyph-reader.ts'
export { readBox } from './reading/box/read-box.ts'
export { confusableGlyphs } from './reading/confusable-glyphs.ts'
export type { FigureReading } from './reading/figure-reading.ts'
export type { Lattice, LatticeSlot } from './reading/lattice.ts'
export { patternLattice } from './reading/pattern-lattice.ts'
export type { ValueBeside } from './reading/ranking/beside-scale.ts'
export {
  type HardFigure,
  type RankedFigure,
  type RankedFigures,
  rankFigures,
} from './reading/ranking/rank-figures.ts'
export type { KnownOfSheet } from './reading/ranking/sheet-habit.ts'
export { type LatticeFigure, type ReadingContext, type Readings, readings } from './reading/readings.ts'
export type { LatticeText } from './reading/texts-by-probability.ts'

// The job document: its types and JSON Schema, reading and writing it.

export type { IdKind } from './job/ids/id-form.ts'
export { type Labelled, labelOf } from './job/ids/label.ts'
export { type Mint, mintIds, type RandomBytes } from './job/ids/mint-ids.ts'
export { newJob } from './job/model/new-job.ts'
export { jobJsonSchema } from './job/model/schema.ts'
export type * from './job/model/types.ts'
export { parseJobText } from './job/parse-job-text.ts'
export { picksOf } from './job/picks/picks-of.ts'
export { withPicks } from './job/picks/with-picks.ts'
export { readJob } from './job/read-job.ts'
export { JobError } from './job/text/job-error.ts'
export { writeJob } from './job/write-job.ts'

// Edits of a job, each with its inverse.

export {
  type Applied,
  applyEdit,
  describeEdit,
  type Edit,
  editJsonSchema,
  type GivenId,
  readEdit,
  readNewEdit,
  reviewEdit,
  type Stamp,
  stampEdit,
} from './job/edits/edit.ts'

// What lines of a job's history did, and the history of one thing.

export type { Change, ChangedField, Thing, Verb } from './job/history/change.ts'
export { changesOf } from './job/history/changes-of.ts'
export type { HistoryLine, Named } from './job/history/history-line.ts'
export { type HistoryEntry, historyOf } from './job/history/history-of.ts'
export type { Subject } from './job/history/subject.ts'

// The table of a job's dimensions, and its rows by Monte Carlo.

export { type SimulatedRow, simulateRow } from './ledger/simulate-row.ts'
export { STANDING_CAUTIONS } from './ledger/table/cautions.ts'
export { dimensionTable } from './ledger/table/dimension-table.ts'
export type * from './ledger/table/table.ts'
export { tableJsonSchema } from './ledger/table/table-schema.ts'

// What is handed over: the table, and notes as annotations, out and in.

export { type FromWebAnnotations, fromWebAnnotations } from './handoff/annotations/in/from-web-annotations.ts'
export { AnnotationError } from './handoff/annotations/model/annotation-error.ts'
export { ANNOTATION_TYPE, toWebAnnotations } from './handoff/annotations/out/to-web-annotations.ts'
export { tableCsv } from './handoff/table/table-csv.ts'
export { tableJson } from './handoff/table/table-json.ts'
export { tableMarkdown } from './handoff/table/table-markdown.ts'

// Why something is so: a code with its parts, and its sentence.

export { type CoreReason, inWords } from './words/core-words.ts'
export type { AnyReason, Part, ReasonOf } from './words/reason.ts'
export { ScantlingError } from './words/scantling-error.ts'
