import type { Outcome } from '../../process/outcome.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import type { ReadOrder } from './read-protocol.ts'

/** Why a scan was not read, when the process that read it had to end. */
export function howItEnded(
  outcome: Exclude<Outcome<never, never>, { end: 'answer' | 'refusal' }>,
  { called, task, limits }: ReadOrder,
): ServiceError {
  const read = { scan: called, page: task.do === 'look' ? null : (task.page ?? null) }
  switch (outcome.end) {
    case 'death':
      return new ServiceError(reason('reading.broke-off', read))
    case 'memory':
      return new ServiceError(reason('reading.too-much-memory', { ...read, most: limits.memory }))
    case 'late':
      return new ServiceError(
        reason('reading.too-slow', { ...read, allowed: outcome.seconds, most: limits.seconds }),
      )
  }
}
