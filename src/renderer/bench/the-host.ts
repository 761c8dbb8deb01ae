import type { Refused } from '../../contract/reply.ts'
import type { RequestAnswer, RequestArguments, RequestName } from '../../contract/requests.ts'
import type { Host } from '../host/host.ts'
import { inWords, reason } from '../words/window-words.ts'
import { useBench } from './bench-store.ts'
import { tell } from './notices.ts'

let present: Host | undefined

/** Called once, at the start. */
export function setHost(host: Host): void {
  present = host
}

/** Takes in whether the host answers; once it does again, nobody needs to be told any more that it did not. */
export function hostAnswers(connected: boolean): void {
  useBench.setState(({ notices }) => ({
    connected,
    ...(connected ? { notices: notices.filter(({ sentence }) => sentence !== GONE) } : {}),
  }))
}

const GONE = inWords(reason('host.gone'))

/** The host of this window. */
export function theHost(): Host {
  if (present === undefined) throw new Error('The window has no host yet: setHost comes first.')
  return present
}

/** Asks the host; undefined when it refused, and the person has been told why. */
export async function ask<N extends RequestName>(
  name: N,
  args: RequestArguments<N>,
): Promise<RequestAnswer<N> | undefined> {
  const reply = await theHost().ask(name, args)
  if (reply.ok) return reply.answer
  tellRefusal(reply)
  return undefined
}

/** Tells the person why something was refused. */
export function tellRefusal(refused: Refused): void {
  tell('failed', isForLookingOnly(refused) ? inWords(reason('edit.for-looking-only')) : refused.sentence)
}

/** Whether something was refused because the job can only be looked at: why, stands above the bench already. */
export const isForLookingOnly = ({ reason: { code } }: Refused): boolean => code === 'job-folder.read-only'
