import { inWords, reason } from '../../words/core-words.ts'

/** Shown in the app, on every printed page and in every export. */
export const STANDING_REASONS = [
  reason('caution.scaled-values-are-estimates'),
  reason('caution.qualified-people-design'),
  reason('caution.old-assemblies-hold-hazards'),
] as const

/** The same in words. */
export const STANDING_CAUTIONS: readonly string[] = STANDING_REASONS.map(inWords)
