import { asSentence } from '../../../core/words/as-sentence.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'

/** Why something was not done, as a sentence for a person; what there is to know of it goes into the log. */
export function whyRefused(what: string, error: unknown, log: (line: string) => void): string {
  if (error instanceof ScantlingError) {
    log(`refused ${what}: ${error.message}`)
    return asSentence(error.message)
  }
  log(`failed ${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
  return (
    'A fault in the program kept it from doing that; whatever was shown as saved is in the job folder. ' +
    'Please report it, and try again.'
  )
}
