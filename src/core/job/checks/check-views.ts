import { reason } from '../../words/core-words.ts'
import { REFERENCE_NEEDS } from '../model/mark-needs.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { checkMarkUse } from './check-mark-use.ts'

/** Checks every view: its outline, and the marks of its references. */
export function checkViews(context: CheckContext): void {
  const { job } = context
  job.views.forEach((view, i) => {
    if (view.outline !== undefined && view.outline.length < 3) {
      refuse(job, ['views', i, 'outline'], reason('job.too-few-corners'))
    }
    view.references.forEach(({ kind, marks }, j) => {
      checkMarkUse(context, ['views', i, 'references', j], {
        ids: marks,
        sheet: view.sheet,
        what: `a figured size of kind ${kind}`,
        needs: [REFERENCE_NEEDS[kind]],
      })
    })
  })
}
