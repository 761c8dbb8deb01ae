import { REFERENCE_NEEDS } from '../model/mark-needs.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { checkMarkUse } from './check-mark-use.ts'
import { checkSheet } from './check-marks.ts'
import { checkWritten } from './check-written.ts'

/** Checks every view: its sheet, its outline, and the marks and sizes of its references. */
export function checkViews(context: CheckContext): void {
  const { job } = context
  job.views.forEach((view, i) => {
    checkSheet(context, ['views', i], view.sheet)
    if (view.outline !== undefined && view.outline.length < 3) {
      refuse(job, ['views', i, 'outline'], 'must have three corners or more')
    }
    view.references.forEach((reference, j) => {
      const path = ['views', i, 'references', j]
      checkMarkUse(context, path, {
        ids: reference.marks,
        sheet: view.sheet,
        what: `a ${reference.kind} reference`,
        needs: [REFERENCE_NEEDS[reference.kind]],
      })
      if (context.known(reference)) return
      checkWritten(context, [...path, 'u'], reference.u, 'length')
      if (reference.kind === 'rectangle') {
        checkWritten(context, [...path, 'width'], reference.width, 'size')
        checkWritten(context, [...path, 'height'], reference.height, 'size')
      } else checkWritten(context, [...path, 'size'], reference.size, 'size')
    })
  })
}
