/** What speaks for a figure and against it, and what is said of one that is read, in a few words each. */

/** How far something is said for a figure. */
type Said = 'yes' | 'maybe' | 'hardly' | 'no'

const STROKES: Readonly<Record<Said, string>> = {
  yes: 'The strokes say so',
  maybe: 'The strokes allow it',
  hardly: 'The strokes hardly allow it',
  no: 'The strokes speak against it',
}

export const READING_WORDS = {
  /** What the strokes alone say of a figure. */
  'choice.strokes': (p: { said: Said }) => STROKES[p.said],
  /** How a figure of this sort goes with the others of the sheet. */
  'choice.habit': (p: { said: 'maybe' | 'hardly' }) =>
    p.said === 'maybe' ? 'not often written so here' : 'not written so on this sheet',
  /** basis: `scaled`; off: how far a figure is from what that says, with its unit. */
  'choice.agrees': (p: { basis: string; off: string }) => `${p.basis} agrees, ${p.off} off`,
  'choice.just-agrees': (p: { basis: string; off: string }) => `${p.basis} just about agrees, ${p.off} off`,
  'choice.disagrees': (p: { basis: string; off: string }) => `${p.basis} does not agree, ${p.off} off`,
  'read.outside': () => 'The box lies off the sheet: drag it round a figure.',
  'read.too-small': () => 'The box is too small to hold a figure: drag it round all of one.',
} as const
