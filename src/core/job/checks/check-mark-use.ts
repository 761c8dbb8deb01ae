import { type MarkNeed, meets } from '../model/mark-needs.ts'
import type { Mark } from '../model/types.ts'
import { quoted } from '../text/quoted.ts'
import { type CheckContext, refuse } from './check-context.ts'

function inWords(needs: readonly (readonly MarkNeed[])[]): string {
  return needs.map((need) => need.map((kind) => `a ${kind}`).join(' and ')).join(', or ')
}

/** Checks the marks that a measure or a reference uses: they exist, lie on the sheet, differ, and are of the right kinds. */
export function checkMarkUse(
  context: CheckContext,
  path: readonly PropertyKey[],
  use: { ids: readonly string[]; sheet: string; what: string; needs: readonly (readonly MarkNeed[])[] },
): void {
  const { job } = context
  if (!use.needs.some((need) => need.length === use.ids.length)) {
    refuse(
      job,
      [...path, 'marks'],
      `must be ${inWords(use.needs)} for ${use.what}, and ${use.ids.length} marks are named`,
    )
  }
  const marks: Mark[] = use.ids.map((id, k) => {
    const mark = context.marks.get(id)
    if (mark === undefined) {
      refuse(job, [...path, 'marks', k], `is ${quoted(id)}, and the job has no such mark`)
    }
    if (mark.sheet !== use.sheet) {
      refuse(
        job,
        [...path, 'marks', k],
        `is ${quoted(id)}, a mark on sheet ${quoted(mark.sheet)}, but the view is on sheet ${quoted(use.sheet)}`,
      )
    }
    if (use.ids.indexOf(id) !== k) {
      refuse(job, [...path, 'marks'], `names mark ${quoted(id)} twice: pick the other one`)
    }
    return mark
  })
  const suits = use.needs.some(
    (need) =>
      need.length === marks.length &&
      need.every((kind, k) => {
        const mark = marks[k]
        return mark !== undefined && meets(mark, kind)
      }),
  )
  if (suits) return
  const found = marks.map((mark) => `a ${mark.kind}`).join(' and ')
  refuse(job, [...path, 'marks'], `must be ${inWords(use.needs)} for ${use.what}, and this is ${found}`)
}
