import type { AnyReason, Say } from './reason.ts'

/** The sentences of a reason with something before the first: where it is. */
export function led(lead: string, reason: AnyReason, say: Say): readonly string[] {
  const [first = '', ...rest] = say.sentences(reason)
  return [`${lead}${first}`, ...rest]
}
