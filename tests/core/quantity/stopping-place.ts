import { NotationError } from '../../../src/core/quantity/notation/notation-error.ts'

/** The notation error that reading ends in; undefined when it reads; any other error is passed on. */
export function stoppingPlace(read: () => unknown): NotationError | undefined {
  try {
    read()
    return undefined
  } catch (error) {
    if (error instanceof NotationError) return error
    throw error
  }
}
