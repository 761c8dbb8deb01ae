import type { Pixel } from '../geometry/frames.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { quoted } from './quoted.ts'
import type { Mark, Person } from './types.ts'

const LEAST_PIXELS = { line: 2, circle: 3, path: 2 } as const

function allTheSame(pixels: readonly Pixel[]): boolean {
  return pixels.every(([x, y]) => x === pixels[0]?.[0] && y === pixels[0]?.[1])
}

function pixelProblem(mark: Mark): string | null {
  if (mark.kind === 'point') return null
  const { kind, pixels } = mark
  const closed = mark.kind === 'path' && mark.closed === true
  const least = closed ? 3 : LEAST_PIXELS[kind]
  const name = closed ? 'closed path' : kind
  if (pixels.length < least)
    return `a ${name} needs ${least} picked points or more, and this has ${pixels.length}`
  if (allTheSame(pixels)) return `all points of this ${name} are the same: pick at least two different ones`
  return null
}

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

/** Checks every mark: its sheet, who picked it, and that its pixels suit its kind. */
export function checkMarks(context: CheckContext): void {
  const { job } = context
  job.marks.forEach((mark, i) => {
    checkSheet(context, ['marks', i], mark.sheet)
    checkBy(context, ['marks', i], mark.by)
    if (context.known(mark)) return
    const problem = pixelProblem(mark)
    if (problem !== null) refuse(job, ['marks', i], `is not sound: ${problem}`)
  })
}
