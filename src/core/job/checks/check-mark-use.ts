import { reason } from '../../words/core-words.ts'
import { type MarkNeed, meets } from '../model/mark-needs.ts'
import type { Mark } from '../model/types.ts'
import { type CheckContext, refuse } from './check-context.ts'

/** Checks the marks that a measure or a reference uses, all of which exist: they lie on the sheet, differ, and are of the right kinds. */
export function checkMarkUse(
  { job, items }: CheckContext,
  path: readonly PropertyKey[],
  use: { ids: readonly string[]; sheet: string; what: string; needs: readonly (readonly MarkNeed[])[] },
): void {
  const { ids, sheet, what, needs } = use
  const at = [...path, 'marks']
  const ofThatMany = needs.filter((need) => need.length === ids.length)
  if (ofThatMany.length === 0) {
    refuse(job, at, reason('job.number-of-marks', { needs, what, given: ids.length }))
  }
  const marks = ids.flatMap((id, k): Mark[] => {
    const mark = items.mark.get(id)
    if (mark === undefined) return []
    if (mark.sheet !== sheet) {
      const problem = reason('job.mark-on-another-sheet', { mark: id, sheet: mark.sheet, of: sheet })
      refuse(job, [...at, k], problem)
    }
    if (ids.indexOf(id) !== k) refuse(job, at, reason('job.same-mark-twice', { mark: id }))
    return [mark]
  })
  const suits = ofThatMany.some((need) =>
    marks.every((mark, k) => {
      const kind = need[k]
      return kind !== undefined && meets(mark, kind)
    }),
  )
  if (suits) return
  const given = marks.map(({ kind }) => kind)
  refuse(job, at, reason('job.kinds-of-marks', { needs, what, given }))
}
