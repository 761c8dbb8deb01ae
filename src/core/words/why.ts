/** Why a value is what it is, and how the rest of the evidence agrees with it. */
import type { AnyReason, Say } from './reason.ts'

const byChoice = (chosen: boolean): string => (chosen ? ', by choice' : '')
const many = (names: readonly string[], verb: readonly [one: string, more: string]): string =>
  `${names.join(' and ')}, which ${names.length > 1 ? verb[1] : verb[0]}`
const enInWords = (en: number): string => `(E_n ${en >= 100 ? 'over 100' : en.toFixed(1)})`

/** A piece of evidence as it is told of. */
type Told = { readonly id: string; readonly basis: string; readonly written: string }

const told = ({ basis, written }: Told): string => `${basis} ${written}`

export const WHY_WORDS = {
  'why.adopted': (p: { from: AnyReason; agreement: AnyReason | null }, say: Say) =>
    `${say(p.from)}${p.agreement === null ? '' : say(p.agreement)}.`,
  'why.rests-on-disputed': (p: { names: readonly string[] }) =>
    `It rests on ${many(p.names, ['is', 'are'])} disputed.`,
  'why.too-uncertain': (p: Told) => `The ${p.basis} value ${p.written} is too uncertain to say much.`,
  'why.not-usable': (p: { id: string; basis: string }, say: Say) =>
    `Its ${say.item(`${p.basis} evidence`, p.id)} can't be used.`,
  'why.figure-unread': (p: { id: string; text: string }) =>
    `The printed figure "${p.text}" can't be read and was not counted.`,
  'why.figure-hard-to-read': (_: { id: string }) => 'A printed figure that is hard to read was not counted.',
  'why.does-not-close': (p: { relations: readonly string[] }, say: Say) =>
    `It stands in ${many(p.relations.map(say.label), ['does', 'do'])} not close.`,
  'why.closes': (p: { relations: readonly string[] }, say: Say) =>
    `It closes in ${p.relations.map(say.label).join(' and ')}.`,

  // Where the value is from
  'from.figure': (p: { chosen: boolean; doubtful?: boolean }) =>
    `The printed figure${p.doubtful ? ', which is hard to read,' : ''} governs${byChoice(p.chosen)}`,
  'from.formula': (p: { formula: string; chosen: boolean }) =>
    `Worked out from ${p.formula}${byChoice(p.chosen)}`,
  'from.sheet': (p: { values: number; chosen: boolean }) =>
    `${p.values === 1 ? 'Scaled off the sheet' : `Mean of ${p.values} scaled values`}${byChoice(p.chosen)}`,
  'from.original': (p: { values: number; chosen: boolean }) =>
    `${p.values === 1 ? 'Measured on the original' : `Mean of ${p.values} measurements of the original`}${byChoice(p.chosen)}`,
  'from.mean': (p: { values: number; chosen: boolean }) =>
    `Weighted mean of ${p.values} pieces of evidence${byChoice(p.chosen)}`,

  // How the rest agrees: goes on from where the value is from
  'agreement.alone': () => '; there is no other evidence',
  'agreement.within-limits': (p: { limits: readonly string[] }) =>
    `; it keeps to the printed ${p.limits.join(' and ')}, and there is no other evidence`,
  'agreement.all': (p: { en: number }) => `; all other evidence agrees ${enInWords(p.en)}`,
  'agreement.one': (p: { other: string; en: number }) => `; the ${p.other} value agrees ${enInWords(p.en)}`,
  'agreement.figure-twice': (p: { en: number }) => `; it stands on the sheet twice alike ${enInWords(p.en)}`,
  'agreement.disputed': (p: { by: Told; en: number }) => `, but ${told(p.by)} disputes it ${enInWords(p.en)}`,
  'agreement.others-dispute': (p: { one: Told; other: Told; en: number }) =>
    `, but ${told(p.one)} and ${told(p.other)} dispute ${enInWords(p.en)}`,
} as const
