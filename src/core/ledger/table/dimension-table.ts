import { parseRelation } from '../../formula/relation-text.ts'
import { labelBesideId } from '../../job/ids/label.ts'
import type { Labels } from '../../job/ids/labels-of-job.ts'
import type { Job, Unit } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import { uncertaintyBudget } from '../../uncertainty/budget.ts'
import { type Coverage, expand } from '../../uncertainty/coverage.ts'
import { coverageFactor } from '../../uncertainty/distributions.ts'
import { inWords } from '../../words/core-words.ts'
import { nameIn } from '../../words/name-in.ts'
import { withStop } from '../../words/with-stop.ts'
import { type Assessed, type Assessment, assess } from '../assessment/assessment.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import { displayFactor, type Style, writeMeasured } from '../units/display-units.ts'
import { STANDING_REASONS } from './cautions.ts'
import { jobCautions } from './job-cautions.ts'
import type { RowValue } from './reach.ts'
import { relationRows } from './relation-rows.ts'
import type { Table, TableEvidence, TableRelation, TableRow } from './table.ts'
import { tableSources } from './table-sources.ts'
import { viewRow } from './view-rows.ts'
import { whyAdopted } from './why.ts'

/**
 * The table of a job: every dimension with its adopted value, uncertainty, basis and status.
 * Lengths in `unit`, areas in its square, angles in degrees.
 * @param job as `readJob` gives it
 * @param options unit: that the table is looked at in, the job's own unless said otherwise. A bare number in a figure
 *   means the job's own whatever this is
 */
export function dimensionTable(job: Job, options: { unit?: Unit } = {}): Table {
  return tableOf(assess(job, options.unit))
}

function tableOf(assessment: Assessment): Table {
  const { job, unit, labels } = assessment
  const views = [...assessment.views.values()].map((v) => viewRow(v, assessment))
  const relations = relationRows(assessment)
  const standsIn = relationsByName(relations)
  const cautionReasons = [
    ...STANDING_REASONS,
    ...jobCautions(assessment, views).map((caution) => nameIn(caution, labels)),
  ]
  const assessed = job.dimensions.map((d) => assessment.dimensions.get(d.name) as Assessed)
  const { sources, by } = tableSources(assessed.map((a) => rowValue(a, unit)))
  return {
    job: job.title,
    unit,
    coverage: 0.95,
    rows: assessed.map((a, i) => rowOf(a, element(by, i), assessment, standsIn.get(a.dimension.name) ?? [])),
    views,
    relations,
    sources,
    cautions: cautionReasons.map((caution) => inWords(caution)),
    cautionReasons,
  }
}

const rowValue = ({ dimension: { name, kind }, decision }: Assessed, unit: Unit): RowValue => ({
  name,
  adopted: decision.adopted,
  factor: displayFactor(kind, unit),
})

function relationsByName(relations: readonly TableRelation[]): Map<string, TableRelation[]> {
  const byName = new Map<string, TableRelation[]>()
  for (const relation of relations) {
    const { left, right } = parseRelation(relation.text)
    for (const name of new Set([...left.names, ...right.names])) {
      byName.set(name, [...(byName.get(name) ?? []), relation])
    }
  }
  return byName
}

function rowOf(
  { dimension, evaluated, decision, restsOn }: Assessed,
  by: TableRow['by'],
  { unit, finest, labels }: Assessment,
  relations: readonly TableRelation[],
): TableRow {
  const factor = displayFactor(dimension.kind, unit)
  const style: Style = {
    kind: dimension.kind,
    unit,
    finest,
    feet: evaluated.some((w) => w.feet === true),
  }
  const writtenOf = (w: EvaluatedEvidence): string => {
    if (w.written !== '' || w.adopted === null) return w.written
    return writeMeasured(w.adopted.value, expand(w.adopted).U, style)
  }
  const { adopted, from } = decision
  const only = from.length === 1 ? from[0] : undefined
  const { u, U, k, dof } = adopted === null ? NO_UNCERTAINTY : expand(adopted)
  const whyReasons = whyAdopted({ decision, evaluated, restsOn, relations, writtenOf }).map((why) =>
    nameIn(why, labels),
  )
  // One literal, not a spread of parts: rows are made by the thousand, and spreading is slow.
  const row: TableRow = {
    name: dimension.name,
    label: dimension.label,
    kind: dimension.kind,
    count: dimension.count ?? 1,
    value: adopted === null ? null : (only?.shown ?? adopted.value * factor),
    written: adopted === null ? '' : only ? writtenOf(only) : writeMeasured(adopted.value, U, style),
    u: u * factor,
    U: U * factor,
    k,
    dof: Number.isFinite(dof) ? dof : null,
    by,
    basis: decision.basis,
    status: decision.status,
    why: whyReasons.map((why) => withStop(inWords(why))).join(' '),
    whyReasons,
    evidence: evaluated.map((w) => evidenceRow(w, factor, writtenOf(w), decision, labels)),
    budget: adopted === null ? [] : uncertaintyBudget(adopted),
  }
  if (only?.tolerance !== undefined) row.tolerance = only.tolerance
  if (restsOn.length > 0) row.restsOn = [...restsOn]
  return row
}

const NO_UNCERTAINTY: Coverage = { u: 0, U: 0, k: coverageFactor(Infinity), dof: Infinity }

function evidenceRow(
  w: EvaluatedEvidence,
  factor: number,
  written: string,
  { pairs, from }: Assessed['decision'],
  labels: Labels,
): TableEvidence {
  const { u, U } = w.compared === null ? NO_UNCERTAINTY : expand(w.compared)
  const row: TableEvidence = {
    id: w.evidence.id,
    basis: w.evidence.basis,
    value: w.shown ?? (w.adopted === null ? null : w.adopted.value * factor),
    u: u * factor,
    U: U * factor,
    written,
    governs: from.includes(w),
  }
  const label = labelBesideId(w.evidence)
  if (label !== undefined) row.label = label
  for (const { a, b, en } of pairs) {
    if (a === w || b === w) row.en = Math.max(row.en ?? 0, en)
  }
  if (w.problem !== undefined) {
    const problem = nameIn(w.problem, labels)
    row.problem = withStop(inWords(problem))
    row.problemReason = problem
  }
  return row
}
