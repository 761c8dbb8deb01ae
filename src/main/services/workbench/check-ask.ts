import type { z } from 'zod'
import { ASKS, type AskName, isAskName } from '../../../contract/asks.ts'
import { oneLine } from '../log/one-line.ts'
import { ServiceError } from '../service-error.ts'

export type CheckedAsk = { [N in AskName]: { name: N; args: z.output<(typeof ASKS)[N]> } }[AskName]

const NAME_SHOWN = 40

/** What was asked for, to be named in a sentence or a log. */
export const askInWords = (name: unknown): string =>
  typeof name === 'string' ? `"${oneLine(name.slice(0, NAME_SHOWN))}"` : `a name that is a ${typeof name}`

/**
 * What came over the wire, seen to be something a window may ask.
 * @throws ServiceError with a sentence when it is not
 */
export function checkAsk(name: unknown, args: unknown): CheckedAsk {
  if (typeof name !== 'string' || !isAskName(name)) {
    throw new ServiceError(`The window asked for ${askInWords(name)}, which is nothing that can be asked.`)
  }
  const parsed = ASKS[name].safeParse(args ?? {})
  if (parsed.success) return { name, args: parsed.data } as CheckedAsk
  const [issue] = parsed.error.issues
  const where = issue === undefined || issue.path.length === 0 ? '' : `${issue.path.join('.')}: `
  throw new ServiceError(
    `The window asked for "${name}" in a form that is not understood (${oneLine(where + (issue?.message ?? ''))}); ` +
      'nothing was changed.',
  )
}
