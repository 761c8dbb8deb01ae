import { asSentence } from '../../core/words/as-sentence.ts'
import { inWords as coreInWords } from '../../core/words/core-words.ts'
import type { AnyReason, ReasonOf } from '../../core/words/reason.ts'
import { speak } from '../../core/words/speak.ts'
import { EDIT_WORDS } from './edit-words.ts'
import { FINDINGS_WORDS } from './findings-words.ts'
import { HOST_WORDS } from './host-words.ts'
import { INSTRUMENT_WORDS } from './instrument-words.ts'
import { INTAKE_WORDS } from './intake-words.ts'
import { PICKED_WORDS } from './picked-words.ts'
import { READING_WORDS } from './reading-words.ts'
import { SEARCH_WORDS } from './strokes.ts'
import { WRITTEN_WORDS } from './written-words.ts'

/** Every reason that the window has of its own, each with its sentence: one file an area. */
const WINDOW = {
  ...EDIT_WORDS,
  ...FINDINGS_WORDS,
  ...HOST_WORDS,
  ...INSTRUMENT_WORDS,
  ...INTAKE_WORDS,
  ...PICKED_WORDS,
  ...READING_WORDS,
  ...SEARCH_WORDS,
  ...WRITTEN_WORDS,
} as const

/** A reason that the window gives. */
export type WindowReason = ReasonOf<typeof WINDOW>

/** Reasons of the window, and words for them and for those of core. */
export const { reason, inWords } = speak(WINDOW, coreInWords)

/** A reason in words that stand by themselves, under a field for instance; empty where there is none. */
export const sentenceOf = (why: AnyReason | null): string => (why === null ? '' : asSentence(inWords(why)))
