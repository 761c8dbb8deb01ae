import { labelBesideId } from '../../job/ids/label.ts'
import type { Labels } from '../../job/ids/labels-of-job.ts'
import { uncertaintyBudget } from '../../uncertainty/budget.ts'
import { type Coverage, expand } from '../../uncertainty/coverage.ts'
import { coverageFactor } from '../../uncertainty/distributions.ts'
import type { Interval } from '../../uncertainty/interval.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { inWords } from '../../words/core-words.ts'
import { nameIn, nameItemsIn } from '../../words/name-in.ts'
import { withStop } from '../../words/with-stop.ts'
import type { Decision } from '../adoption/adopt.ts'
import { DISPUTED_ABOVE } from '../adoption/agreement.ts'
import type { Assessed } from '../assessment/assessed.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { type EvaluatedEvidence, isDoubted } from '../evidence/evaluated-evidence.ts'
import { displayFactor, nearFigures, type Style, writeMeasured } from '../units/display-units.ts'
import { doubtfulEnd } from './doubtful-end.ts'
import type { TableEvidence, TableRelation, TableRow } from './table.ts'
import { isExact, tellingOf } from './telling.ts'
import { whyAdopted } from './why.ts'

/** What rows are written by. */
type RowSetting = Pick<Assessment, 'job' | 'unit' | 'figuresAs' | 'finest' | 'feetFrom' | 'labels'>

/**
 * A dimension as the table has it.
 * @param by what it is uncertain by
 * @param relations that it stands in
 */
export function dimensionRow(
  { dimension, evaluated, decision, restsOn, unchecked }: Assessed,
  by: TableRow['by'],
  { job, unit, figuresAs, finest, feetFrom, labels }: RowSetting,
  relations: readonly TableRelation[],
): TableRow {
  const factor = displayFactor(dimension.kind, unit)
  const style: Style = {
    kind: dimension.kind,
    unit,
    figuresIn: job.unit,
    figuresAs,
    finest,
    // One that is printed in feet is in feet whatever it comes to.
    feetFrom: evaluated.some((w) => w.feet === true) ? 0 : feetFrom,
  }
  const writtenOf = (w: EvaluatedEvidence): string => {
    if (w.written !== '' || w.adopted === null) return w.written
    return writeMeasured(w.adopted.value, coverageOf(w.adopted, w).U, style)
  }
  const { adopted, from } = decision
  const only = from.length === 1 ? from[0] : undefined
  const { u, U, k, dof } = adopted === null ? NO_UNCERTAINTY : coverageOf(adopted, only)
  const printed = decision.basis === 'printed' ? only : undefined
  // One that is hard to read or loose is no exact figure: with a ± beside it, it would read as one with a tolerance.
  const figure = U === 0 ? printed : undefined
  const writtenBetween = ({ low, high }: Interval, U: number): WrittenInterval => ({
    low: low * factor,
    high: high * factor,
    written: `${writeMeasured(low, U, style)} to ${writeMeasured(high, U, style)}`,
  })
  const between = only?.between?.adopted
  const interval = between && writtenBetween(between, U)
  const telling = tellingOf(dimension.kind, unit, writtenOf)
  const whyReasons = whyAdopted({
    decision,
    U,
    evaluated,
    restsOn,
    unchecked,
    relations,
    telling,
    interval: interval?.written,
    doubtful: doubtfulEnd(dimension.kind, decision, U, between),
  }).map((why) => nameIn(nameItemsIn(why, dimension.evidence), labels))
  // One literal, not a spread of parts: rows are made by the thousand, and spreading is slow.
  const row: TableRow = {
    name: dimension.name,
    label: dimension.label,
    kind: dimension.kind,
    count: dimension.count ?? 1,
    value: adopted === null ? null : (figure?.shown ?? adopted.value * factor),
    written: adopted === null ? '' : figure ? writtenOf(figure) : writeMeasured(adopted.value, U, style),
    u: u * factor,
    U: U * factor,
    k,
    dof: Number.isFinite(dof) ? dof : null,
    by,
    basis: decision.basis,
    status: decision.status,
    why: whyReasons.map((why) => withStop(inWords(why))).join(' '),
    whyReasons,
    evidence: evaluated.map((w) => {
      const piece = evidenceRow(w, factor, writtenOf(w), decision, labels)
      if (w.between?.compared !== undefined) {
        piece.interval = writtenBetween(w.between.compared, w.coverage?.U ?? 0)
      }
      return piece
    }),
    budget: adopted === null ? [] : uncertaintyBudget(adopted),
  }
  if (interval !== undefined) row.interval = interval
  if (printed?.tolerance !== undefined) row.tolerance = printed.tolerance
  if (adopted !== null && figure === undefined) {
    const near = unchecked.some(isDoubted)
      ? undefined
      : nearFigures(adopted.value, U, style, (size) => decision.witnesses.every((w) => allows(w, size)))
    if (near !== undefined) {
      row.near = near.near
      if (near.range !== undefined) row.nearRange = near.range
    }
    if (U === 0 && decision.basis === 'derived') row.figured = true
  }
  const out = relations.filter(({ holds, problemReason }) => !holds && problemReason === undefined)
  if (out.length > 0) row.sumsOut = out.map(({ id }) => id)
  if (restsOn.length > 0) row.restsOn = [...restsOn]
  if (adopted !== null && unchecked.length > 0) row.unchecked = unchecked.map(({ view }) => view)
  return row
}

/** Rounding of the computer, as a share of a size. */
const ROUNDING = 1e-9

/** Whether a size lies within what a piece of evidence says. */
const allows = ({ compared, coverage }: EvaluatedEvidence, size: number): boolean =>
  compared === null || coverage === null || Math.abs(compared.value - size) <= coverage.U + ROUNDING * size

type WrittenInterval = NonNullable<TableRow['interval']>

/** What is adopted is mostly what it is compared by, of which that is known. */
const coverageOf = (x: Uncertain, w: EvaluatedEvidence | undefined): Coverage =>
  x === w?.compared && w.coverage !== null ? w.coverage : expand(x)

const NO_UNCERTAINTY: Coverage = { u: 0, U: 0, k: coverageFactor(Infinity), dof: Infinity }

function evidenceRow(
  w: EvaluatedEvidence,
  factor: number,
  written: string,
  { pairs, from, witnesses, duplicates, odd, status }: Decision,
  labels: Labels,
): TableEvidence {
  const { u, U } = w.coverage ?? NO_UNCERTAINTY
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
  if (isExact(w)) row.exact = true
  const of = duplicates.find(({ piece }) => piece === w)?.of
  if (of !== undefined) row.countsWith = of.evidence.id
  const standsOut = witnesses.length > 2 ? odd.includes(w) : (row.en ?? 0) > DISPUTED_ABOVE
  if (status === 'disputed' && standsOut) row.odd = true
  if (w.problem !== undefined) {
    const problem = nameIn(nameItemsIn(w.problem, [w.evidence]), labels)
    row.problem = withStop(inWords(problem))
    row.problemReason = problem
  }
  if (w.remarks !== undefined) {
    row.remarks = w.remarks.map((remark) => withStop(inWords(remark)))
    row.remarkReasons = [...w.remarks]
  }
  return row
}
