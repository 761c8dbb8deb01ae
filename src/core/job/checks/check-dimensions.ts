import { reason } from '../../words/core-words.ts'
import { kindOfMeasure, MEASURE_NEEDS } from '../model/mark-needs.ts'
import type { Dimension, Evidence } from '../model/types.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { checkMarkUse } from './check-mark-use.ts'

function checkScaled(
  context: CheckContext,
  path: readonly PropertyKey[],
  { kind }: Dimension,
  { view, measure, marks }: Extract<Evidence, { basis: 'scaled' }>,
): void {
  const { job } = context
  const sheet = context.items.view.get(view)?.sheet
  if (sheet === undefined) return
  if (kind === 'count') refuse(job, path, reason('job.count-is-scaled'))
  const gives = kindOfMeasure(measure)
  if (gives !== kind) {
    refuse(job, [...path, 'measure'], reason('job.measure-of-another-kind', { measure, gives, kind }))
  }
  checkMarkUse(context, path, {
    ids: marks,
    sheet,
    what: `the measure "${measure}"`,
    needs: MEASURE_NEEDS[measure],
  })
}

/** Checks that scaled evidence measures what its dimension is, between marks of the kinds that it takes. */
export function checkDimensions(context: CheckContext): void {
  context.job.dimensions.forEach((dimension, i) => {
    dimension.evidence.forEach((evidence, j) => {
      if (evidence.basis === 'scaled')
        checkScaled(context, ['dimensions', i, 'evidence', j], dimension, evidence)
    })
  })
}
