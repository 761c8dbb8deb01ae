import type { ReasonOf } from './reason.ts'
import { speak } from './speak.ts'

/** Every reason that core has, each with its sentence: one file an area. */
const CORE = {}

/** A reason that core gives. */
export type CoreReason = ReasonOf<typeof CORE>

export const { reason, inWords } = speak(CORE)
