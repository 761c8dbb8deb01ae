import { howToRaise, limitInWords } from '../../limits/limits-in-words.ts'
import { ServiceError } from '../../service-error.ts'
import type { ReadOrder, ReadTask } from './reader-messages.ts'

/** What was being read, to begin a sentence with. */
function what(called: string, task: ReadTask): string {
  return task.do === 'look' || task.page === 1
    ? `The scan ${called}`
    : `Page ${task.page} of the scan ${called}`
}

/** Why the process that read a scan ended without an answer, as a sentence for a person. */
export function howItEnded(
  by: 'crash' | 'time' | 'memory',
  { called, task, limits }: ReadOrder,
): ServiceError {
  const read = what(called, task)
  if (by === 'crash') {
    return new ServiceError(
      `${read} can't be read, because reading it broke off: it is damaged, so copy or scan it again.`,
    )
  }
  const name = by === 'time' ? 'seconds' : 'memory'
  const most = limitInWords(name, limits[name])
  const why =
    by === 'time' ? `takes longer than ${most} to read` : `takes more than ${most} of memory to read`
  return new ServiceError(`${read} ${why}: it may be damaged; where it is only large, ${howToRaise(name)}.`)
}
