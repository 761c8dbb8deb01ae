import { ANNOTATION_WORDS } from './annotations.ts'
import { CALIBRATION_WORDS } from './calibration.ts'
import { DOCUMENT_WORDS } from './documents.ts'
import { EDIT_WORDS } from './edits.ts'
import { EVIDENCE_WORDS } from './evidence.ts'
import { FORMULA_WORDS } from './formula.ts'
import { GEOMETRY_WORDS } from './geometry.ts'
import { HARD_FIGURE_WORDS } from './hard-figures.ts'
import { HISTORY_WORDS } from './history.ts'
import { JOB_WORDS } from './job.ts'
import { MEASURING_WORDS } from './measuring.ts'
import { NOTATION_WORDS } from './notation.ts'
import { PICK_WORDS } from './picks.ts'
import type { ReasonOf } from './reason.ts'
import { speak } from './speak.ts'
import { STROKE_WORDS } from './strokes.ts'
import { TABLE_WORDS } from './table.ts'
import { WHY_WORDS } from './why.ts'

/** Every reason that core has, each with its sentence: one file an area. */
const CORE = {
  ...ANNOTATION_WORDS,
  ...CALIBRATION_WORDS,
  ...DOCUMENT_WORDS,
  ...EDIT_WORDS,
  ...EVIDENCE_WORDS,
  ...FORMULA_WORDS,
  ...GEOMETRY_WORDS,
  ...HARD_FIGURE_WORDS,
  ...HISTORY_WORDS,
  ...JOB_WORDS,
  ...MEASURING_WORDS,
  ...NOTATION_WORDS,
  ...PICK_WORDS,
  ...STROKE_WORDS,
  ...TABLE_WORDS,
  ...WHY_WORDS,
} as const

/** A reason that core gives. */
export type CoreReason = ReasonOf<typeof CORE>

/**
 * `reason`: one that core has words for, by its code and parts. `inWords`: its sentence.
 * @throws RangeError, from `inWords`, for a code that core has no words for
 */
export const { reason, inWords } = speak(CORE)
