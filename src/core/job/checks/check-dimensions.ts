import { kindOfMeasure, MEASURE_NEEDS } from '../model/mark-needs.ts'
import type { Dimension, DimensionKind, Evidence } from '../model/types.ts'
import { quoted } from '../text/quoted.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { checkMarkUse } from './check-mark-use.ts'
import { checkBy, checkSheet } from './check-marks.ts'
import { checkWritten, type WrittenAs } from './check-written.ts'

function checkScaled(
  context: CheckContext,
  path: readonly PropertyKey[],
  dimension: Dimension,
  evidence: Extract<Evidence, { basis: 'scaled' }>,
): void {
  const { job } = context
  const view = context.views.get(evidence.view)
  if (view === undefined) {
    refuse(job, [...path, 'view'], `is ${quoted(evidence.view)}, and the job has no such view`)
  }
  if (dimension.kind === 'count') {
    refuse(job, path, 'is scaled, but a count is not measured: count it, or change the kind of the dimension')
  }
  if (kindOfMeasure(evidence.measure) !== dimension.kind) {
    refuse(
      job,
      [...path, 'measure'],
      `is "${evidence.measure}", which gives ${article(kindOfMeasure(evidence.measure))}, but the dimension is ${article(dimension.kind)}`,
    )
  }
  checkMarkUse(context, path, {
    ids: evidence.marks,
    sheet: view.sheet,
    what: `the measure "${evidence.measure}"`,
    needs: MEASURE_NEEDS[evidence.measure],
  })
}

function article(kind: DimensionKind): string {
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`
}

function checkFound(
  context: CheckContext,
  path: readonly PropertyKey[],
  dimension: Dimension,
  evidence: Extract<Evidence, { basis: 'found' }>,
): void {
  const { instrument } = evidence
  if (instrument !== undefined && !context.instruments.has(instrument)) {
    refuse(
      context.job,
      [...path, 'instrument'],
      `is ${quoted(instrument)}, and the job has no such instrument`,
    )
  }
  if (context.known(dimension)) return
  evidence.readings.forEach((reading, k) => {
    checkWritten(context, [...path, 'readings', k], reading, dimension.kind)
  })
  checkWritten(context, [...path, 'worn', 'loss'], evidence.worn?.loss, LOSSES[dimension.kind])
  checkWritten(context, [...path, 'worn', 'u'], evidence.worn?.u, dimension.kind)
}

/** A bore that has worn wider has lost less than nothing of its diameter. */
const LOSSES: Record<DimensionKind, WrittenAs> = {
  length: 'signed length',
  angle: 'signed angle',
  area: 'area',
  count: 'count',
}

const TOLERANCES: Record<DimensionKind, WrittenAs> = {
  length: 'tolerance',
  angle: 'tolerance of an angle',
  area: 'area',
  count: 'count',
}

/** Checks every dimension and its evidence: all they refer to, and what they are written as. */
export function checkDimensions(context: CheckContext): void {
  context.job.dimensions.forEach((dimension, i) => {
    if (!context.known(dimension)) {
      checkWritten(context, ['dimensions', i, 'tolerance'], dimension.tolerance, TOLERANCES[dimension.kind])
    }
    dimension.evidence.forEach((evidence, j) => {
      const path = ['dimensions', i, 'evidence', j]
      checkBy(context, path, evidence.by)
      switch (evidence.basis) {
        case 'printed':
          if (evidence.sheet !== undefined) checkSheet(context, path, evidence.sheet)
          break
        case 'scaled':
          checkScaled(context, path, dimension, evidence)
          break
        case 'found':
          checkFound(context, path, dimension, evidence)
          break
        case 'derived':
          break
      }
    })
  })
}
