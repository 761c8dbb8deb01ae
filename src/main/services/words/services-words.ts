import { inWords as coreInWords } from '../../../core/words/core-words.ts'
import type { ReasonOf } from '../../../core/words/reason.ts'
import { speak } from '../../../core/words/speak.ts'
import { FILE_WORDS } from './files.ts'

/** Every reason that services and hosts have, each with its sentence: one file a room. */
const SERVICES = {
  ...FILE_WORDS,
} as const

/** A reason that a service or a host gives. */
export type ServiceReason = ReasonOf<typeof SERVICES>

/** `inWords` says core's reasons too, which may be parts of these. */
export const { reason, inWords } = speak(SERVICES, coreInWords)
