import type { Relation } from '../../job/model/types.ts'
import { inWords } from '../../words/core-words.ts'
import { nameIn } from '../../words/name-in.ts'
import type { Assessed } from '../assessment/assessed.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { displayFactor } from '../units/display-units.ts'
import type { CalibratedView } from '../views/calibrate-view.ts'
import { STANDING_REASONS } from './cautions.ts'
import { doubtfulRows, type KeptDoubtful } from './doubtful-rows.ts'
import { jobCautions } from './job-cautions.ts'
import { type KeptRow, keptRows } from './kept-rows.ts'
import type { RowValue } from './reach.ts'
import { relationRows } from './relation-rows.ts'
import { type CautionsByFeature, scatterCautions } from './scatter-cautions.ts'
import type { Table, TableRelation, TableView } from './table.ts'
import { tableSources } from './table-sources.ts'
import { viewRow } from './view-rows.ts'

/** A table with what its parts were made from. */
export interface WorkedOut {
  table: Table
  assessment: Assessment
  views: ReadonlyMap<CalibratedView, TableView>
  relations: ReadonlyMap<Relation, TableRelation>
  rows: ReadonlyMap<Assessed, KeptRow>
  scatter: CautionsByFeature
  /** By the name of the dimension. */
  doubtful: ReadonlyMap<string, KeptDoubtful>
}

/**
 * The table of an assessed job.
 * @param before that of the assessment from which this one was made: what comes out the same is taken from it, so that
 *   a row that is the same one need not be sent or drawn again
 */
export function workOutTable(assessment: Assessment, before?: WorkedOut): WorkedOut {
  const { job, unit, figuresAs, labels } = assessment
  const views = new Map(
    [...assessment.views.values()].map((view) => [view, viewRowAfter(view, assessment, before)]),
  )
  const relations = relationRows(assessment, before)
  const dimensions = job.dimensions.map(({ name }) => assessment.dimensions.get(name) as Assessed)
  const { sources, by } = tableSources(dimensions.map((assessed) => rowValue(assessed, unit)))
  const rows = keptRows(dimensions, by, assessment, relations.values(), before?.rows)
  const viewRows = [...views.values()]
  const scatter = scatterCautions(assessment.features.values(), before?.scatter)
  const doubtful = doubtfulRows(assessment, before?.doubtful)
  const cautionReasons = [
    ...STANDING_REASONS,
    ...jobCautions(assessment, viewRows, scatter).map((caution) => nameIn(caution, labels)),
  ]
  const table: Table = {
    job: job.title,
    unit,
    figuresAs,
    coverage: 0.95,
    rows: [...rows.values()].map(({ row }) => row),
    views: viewRows,
    relations: [...relations.values()],
    ...(doubtful.size === 0 ? {} : { doubtful: [...doubtful.values()].flatMap(({ rows }) => rows) }),
    sources,
    cautions: cautionReasons.map((caution) => inWords(caution)),
    cautionReasons,
  }
  return { table, assessment, views, relations, rows, scatter, doubtful }
}

/** The row of a view: that from before where neither it nor what its sheet tells has changed, or nothing came of that. */
function viewRowAfter(
  view: CalibratedView,
  assessment: Assessment,
  before: WorkedOut | undefined,
): TableView {
  const was = before?.views.get(view)
  const { sheet } = view.view
  if (was !== undefined && before?.assessment.stretches.get(sheet) === assessment.stretches.get(sheet))
    return was
  const row = viewRow(view, assessment)
  return was !== undefined && JSON.stringify(was) === JSON.stringify(row) ? was : row
}

const rowValue = ({ dimension: { name, kind }, decision }: Assessed, unit: Assessment['unit']): RowValue => ({
  name,
  adopted: decision.adopted,
  factor: displayFactor(kind, unit),
})
