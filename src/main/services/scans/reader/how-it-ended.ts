import { ServiceError } from '../../service-error.ts'
import { howToRaise, limitInWords } from '../../words/limits-in-words.ts'
import type { ReadOrder, ReadTask } from './read-protocol.ts'

/** What was being read, to begin a sentence with. */
function what(called: string, task: ReadTask): string {
  return task.do === 'look' || task.page === undefined || task.page === 1
    ? `The scan ${called}`
    : `Page ${task.page} of the scan ${called}`
}

/** That reading a scan took longer than it may, as a sentence for a person. @param allowed seconds */
export function tookTooLong({ called, task, limits }: ReadOrder, allowed: number): ServiceError {
  const late = `${what(called, task)} takes longer than ${limitInWords('seconds', allowed)} to read`
  return new ServiceError(
    allowed < limits.seconds
      ? `${late}, far more than a file of its size needs: it is damaged, so copy or scan it again.`
      : `${late}: it may be damaged; where it is only large, ${howToRaise('seconds')}.`,
  )
}

/** Why the process that read a scan ended without an answer, as a sentence for a person. */
export function howItEnded(by: 'crash' | 'memory', { called, task, limits }: ReadOrder): ServiceError {
  const read = what(called, task)
  if (by === 'crash') {
    return new ServiceError(
      `${read} can't be read, because reading it broke off: it is damaged, so copy or scan it again.`,
    )
  }
  const most = limitInWords('memory', limits.memory)
  return new ServiceError(
    `${read} takes more than ${most} of memory to read: it may be damaged; where it is only large, ${howToRaise('memory')}.`,
  )
}
