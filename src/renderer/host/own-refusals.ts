import type { Refused } from '../../contract/reply.ts'
import { inWords, reason, type WindowReason } from '../words/window-words.ts'

const refused = (why: WindowReason): Refused => ({ ok: false, reason: why, sentence: inWords(why) })

/** When nothing answers any more. */
export const gone = refused(reason('host.gone'))

export const notUnderstood = refused(reason('host.not-understood'))

export const tooLarge = refused(reason('host.too-large'))

/** What comes of a scan whose handing over a person stopped. */
export const notBroughtIn = (file: string): DOMException =>
  new DOMException(inWords(reason('host.scan-stopped', { file })), 'AbortError')
