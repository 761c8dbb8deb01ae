import type { Person } from '../model/types.ts'
import { quoted } from '../text/quoted.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { foundProblem, picksProblem, repeatedByProblem } from './check-mark-pixels.ts'

/** Checks that a person who did something is one of the people, when people are listed at all. */
export function checkBy(
  context: CheckContext,
  path: readonly PropertyKey[],
  by: Person['id'] | undefined,
): void {
  if (by === undefined || context.people.size === 0 || context.people.has(by)) return
  refuse(
    context.job,
    [...path, 'by'],
    `is ${quoted(by)}, who is not among the people of this job: add them, or correct the id`,
  )
}

/** Checks that something names a sheet that exists. */
export function checkSheet(context: CheckContext, path: readonly PropertyKey[], sheet: string): void {
  if (context.sheets.has(sheet)) return
  refuse(context.job, [...path, 'sheet'], `is ${quoted(sheet)}, and the job has no such sheet`)
}

/** Checks every mark: its sheet, who picked it, and that what was picked suits its kind. */
export function checkMarks(context: CheckContext): void {
  const { job } = context
  job.marks.forEach((mark, i) => {
    checkSheet(context, ['marks', i], mark.sheet)
    checkBy(context, ['marks', i], mark.by)
    mark.repeatedBy?.forEach(({ by }, k) => {
      checkBy(context, ['marks', i, 'repeatedBy', k], by)
    })
    if (context.known(mark)) return
    const problem = picksProblem(mark) ?? foundProblem(mark) ?? repeatedByProblem(mark)
    if (problem !== null) refuse(job, ['marks', i], `is not sound: ${problem}`)
  })
}
