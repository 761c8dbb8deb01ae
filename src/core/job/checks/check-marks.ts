import { reason } from '../../words/core-words.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { foundProblem, mirrorProblem, picksProblem, repeatedByProblem } from './check-mark-pixels.ts'

/** Checks that what was picked of every mark suits its kind. */
export function checkMarks({ job }: CheckContext): void {
  job.marks.forEach((mark, i) => {
    const problem = picksProblem(mark) ?? foundProblem(mark) ?? repeatedByProblem(mark) ?? mirrorProblem(mark)
    if (problem !== null) refuse(job, ['marks', i], reason('job.mark-not-sound', { problem }))
  })
}
