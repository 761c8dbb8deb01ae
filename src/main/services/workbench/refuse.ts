import type { Refused } from '../../../contract/reply.ts'
import { asSentence } from '../../../core/words/as-sentence.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { inWords, reason } from '../words/services-words.ts'

/** A reason as a sentence of its own. */
export const sentenceOf = (why: AnyReason): string => asSentence(inWords(why))

/** Why something was not done, for a person; what there is to know of it goes into the log. */
export function whyNot(what: string, error: unknown, log: (line: string) => void): AnyReason {
  if (error instanceof ScantlingError) {
    log(`refused ${what}: ${error.message}`)
    return error.reason
  }
  log(`failed ${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
  return reason('workbench.fault')
}

export const refusedFor = (why: AnyReason): Refused => ({
  ok: false,
  reason: why,
  sentence: sentenceOf(why),
})
