import type { Dimension, Job } from '../job/types.ts'
import { uncertaintyBudget } from '../uncertainty/budget.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import { expand } from '../uncertainty/coverage.ts'
import { coverageFactor } from '../uncertainty/distributions.ts'
import { type Assessed, type Assessment, assess } from './assessment.ts'
import { STANDING_CAUTIONS } from './cautions.ts'
import { displayFactor, type Style, writeMeasured } from './display-units.ts'
import { relationRows } from './relations.ts'
import { scatterCautions } from './scatter-cautions.ts'
import type { Table, TableEvidence, TableRow } from './table.ts'
import { viewRow } from './view-rows.ts'
import type { Weighed } from './weighed.ts'
import { whyAdopted } from './why.ts'

/**
 * The table of a job: every dimension with its adopted value, uncertainty, basis and status.
 * Lengths in the job's unit, areas in its square, angles in degrees.
 * @param job as `readJob` gives it
 */
export function dimensionTable(job: Job): Table {
  return tableOf(assess(job))
}

/** The table of a job that is already evaluated. */
export function tableOf(assessment: Assessment): Table {
  const { job } = assessment
  const denominator = assessment.finest ?? DEFAULT_FRACTION
  const views = [...assessment.views.values()].map((v) => viewRow(v, job))
  return {
    job: job.title,
    unit: job.unit,
    coverage: 0.95,
    rows: job.dimensions.map((d) => rowOf(assessment.dimensions.get(d.name) as Assessed, job, denominator)),
    views,
    relations: relationRows(assessment),
    cautions: [
      ...STANDING_CAUTIONS,
      ...[...assessment.views.values()].flatMap((v) => v.caution ?? []),
      ...scatterCautions(assessment.features.values()),
      ...views.flatMap((v) => (v.problem === undefined ? [] : [`View "${v.name}": ${v.problem}`])),
    ],
  }
}

function rowOf({ dimension, weighed, decision }: Assessed, job: Job, denominator: number): TableRow {
  const factor = displayFactor(dimension.kind, job.unit)
  const style: Style = {
    kind: dimension.kind,
    unit: job.unit,
    denominator,
    feet: weighed.some((w) => w.feet === true),
  }
  const writtenOf = (w: Weighed): string => {
    if (w.written !== '' || w.adopted === null) return w.written
    return writeMeasured(w.adopted.value, expand(w.adopted).U, style)
  }
  const base = {
    name: dimension.name,
    label: dimension.label,
    kind: dimension.kind,
    count: dimension.count ?? 1,
    status: decision.status,
    why: whyAdopted(decision, weighed, writtenOf),
    ...toleranceOf(dimension, job),
    evidence: weighed.map((w) => evidenceRow(w, factor, writtenOf(w), decision.pairs)),
  }
  const { adopted } = decision
  if (adopted === null) {
    const none = {
      value: null,
      written: '',
      u: 0,
      U: 0,
      k: coverageFactor(Infinity),
      dof: null,
      basis: null,
      budget: [],
    }
    return { ...base, ...none }
  }
  const { u, U, k, dof } = expand(adopted)
  const [only] = decision.from
  const shown = decision.from.length === 1 ? only?.shown : undefined
  return {
    ...base,
    value: shown ?? adopted.value * factor,
    written: decision.from.length === 1 && only ? writtenOf(only) : writeMeasured(adopted.value, U, style),
    u: u * factor,
    U: U * factor,
    k,
    dof: Number.isFinite(dof) ? dof : null,
    basis: decision.basis,
    budget: uncertaintyBudget(adopted),
  }
}

function evidenceRow(
  w: Weighed,
  factor: number,
  written: string,
  pairs: Assessed['decision']['pairs'],
): TableEvidence {
  const own = pairs.filter((p) => p.a === w || p.b === w)
  return {
    id: w.evidence.id,
    basis: w.evidence.basis,
    value: w.shown ?? (w.adopted === null ? null : w.adopted.value * factor),
    u: w.compared === null ? 0 : standardUncertainty(w.compared) * factor,
    written,
    ...(own.length === 0 ? {} : { en: Math.max(...own.map((p) => p.en)) }),
    ...(w.problem === undefined ? {} : { problem: w.problem }),
  }
}

function toleranceOf(dimension: Dimension, job: Job): { tolerance?: string } {
  const stated = dimension.tolerance ?? (dimension.kind === 'length' ? job.tolerance : undefined)
  return stated === undefined ? {} : { tolerance: stated }
}

/** Sixty-fourths, where no figure of the job shows how finely it is graduated. */
const DEFAULT_FRACTION = 64
