import { isRequestName, REQUESTS, type RequestName, type RequestRead } from '../../../contract/requests.ts'
import { oneLine } from '../log/one-line.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/** A request that was read: what it gives suits its name. */
export type Requested<N extends RequestName = RequestName> = {
  [M in N]: { name: M; args: RequestRead[M] }
}[N]

const NAME_SHOWN = 40

/** What was asked for, to be named in a sentence or a log. */
export const requestInWords = (name: unknown): string =>
  typeof name === 'string' ? `"${shown(name)}"` : `a name that is a ${typeof name}`

const shown = (name: string): string => oneLine(name.slice(0, NAME_SHOWN))

/**
 * What came over the wire, seen to be something a window may ask.
 * @throws ServiceError when it is not
 */
export function readRequest(name: unknown, args: unknown): Requested {
  if (typeof name !== 'string' || !isRequestName(name)) {
    const text = typeof name === 'string' ? shown(name) : null
    throw new ServiceError(reason('request.unknown', { name: text, type: typeof name }))
  }
  const parsed = REQUESTS[name].args.safeParse(args ?? {})
  if (parsed.success) return { name, args: parsed.data } as Requested
  const [issue] = parsed.error.issues
  const where = issue === undefined || issue.path.length === 0 ? '' : `${issue.path.join('.')}: `
  const problem = oneLine(where + (issue?.message ?? ''))
  throw new ServiceError(reason('request.malformed', { name, problem }))
}
