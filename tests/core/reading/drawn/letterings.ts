import type { Dice } from './dice.ts'
import type { Face } from './face.ts'
import { type Fount, fountFace } from './fount-face.ts'
import { penFace } from './pen/pen-face.ts'
import { PEN_HANDS } from './pen/pen-hands.ts'

/** Founts that no reader here was trained on. */
export const FOUNTS = {
  'Special Elite': { from: '@fontsource/special-elite', unsteady: 0.02 },
  'Cutive Mono': { from: '@fontsource/cutive-mono', unsteady: 0.02, spread: [0.03, 0.06] },
  'Work Sans': { from: '@fontsource/work-sans', unsteady: 0 },
  'Old Standard': { from: '@fontsource/old-standard-tt', unsteady: 0, spread: [0.015, 0.04] },
  'IM Fell English': { from: '@fontsource/im-fell-english', unsteady: 0.006 },
  'Architects Daughter': { from: '@fontsource/architects-daughter', unsteady: 0.02 },
  'Patrick Hand': { from: '@fontsource/patrick-hand', unsteady: 0.015 },
  'Patrick Hand, slanted': { from: '@fontsource/patrick-hand', unsteady: 0.015, sheared: [15, 20] },
  Kalam: { from: '@fontsource/kalam', unsteady: 0.015 },
  'Stardos Stencil': { from: '@fontsource/stardos-stencil', unsteady: 0.004 },
} as const satisfies Readonly<Record<string, Fount>>

export type LetteringName = keyof typeof FOUNTS | keyof typeof PEN_HANDS

/** Every lettering of the examination: founts, then pens. */
export const LETTERINGS = [...Object.keys(FOUNTS), ...Object.keys(PEN_HANDS)] as readonly LetteringName[]

const isFount = (name: LetteringName): name is keyof typeof FOUNTS => name in FOUNTS

/** The lettering at work on one figure. */
export const faceOf = (name: LetteringName, d: Dice): Face =>
  isFount(name) ? fountFace(FOUNTS[name], d) : penFace(PEN_HANDS[name], d)

/** Letterings with quotes of their own, in which marks of feet and inches may be set. */
export const hasCurlyQuotes = (name: LetteringName): boolean =>
  name === 'Old Standard' || name === 'IM Fell English'

/** Whether figures are set in small letters as well as capitals. */
export const hasSmallLetters = (name: LetteringName): boolean => isFount(name)
