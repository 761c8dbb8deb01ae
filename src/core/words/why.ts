/** Why a value is what it is, and how the rest of the evidence agrees with it. */
import { basisWord } from '../job/ids/basis-word.ts'
import { capital } from './capital.ts'
import type { AnyReason, Say } from './reason.ts'

const byChoice = (chosen: boolean): string => (chosen ? ', by choice' : '')
const many = (names: readonly string[], verb: readonly [one: string, more: string]): string =>
  `${names.join(' and ')}, which ${names.length > 1 ? verb[1] : verb[0]}`
/** A piece of evidence as it is told of. */
type Told = { readonly id: string; readonly basis: string; readonly written: string }

const told = ({ basis, written }: Told): string => `${basisWord(basis)} ${written}`

/** A relation, and by how much it misses. */
type Misses = { readonly id: string; readonly sum: boolean; readonly by: string }

/** `sum heights`, `relation 1`: what has a label has its noun in it. */
const nameOf = ({ id, sum }: Misses, say: Say): string =>
  `${sum ? 'sum' : 'relation'} ${say.label(id).replace(/^relation /, '')}`

const onWhat = (basis: string): string =>
  basis === 'scaled'
    ? 'the same picks'
    : basis === 'derived'
      ? 'the same formula'
      : basis === 'found'
        ? 'the same readings'
        : 'the same'

/** What agreement could have shown. */
const shown = (error: string | null): string =>
  error === null ? '' : `, and would have shown an error of ${error} or more`

/** What a difference may come to; nothing is allowed between exact values, and that goes without saying. */
const allowing = (allowed: string | null): string => (allowed === null ? '' : `; ${allowed} would be allowed`)

export const WHY_WORDS = {
  'why.adopted': (p: { from: AnyReason; agreement: AnyReason | null }, say: Say) =>
    `${say(p.from)}${p.agreement === null ? '' : say(p.agreement)}.`,
  'why.first-order-fails': (p: { interval: string }) =>
    `At 95 % it lies between ${p.interval.replace(' to ', ' and ')}, and not evenly to both sides.`,
  'why.may-be-nothing': () => "It can't be told from 0, which lies within what it may be at 95 %.",
  'why.may-be-parallel': () => "The two lines can't be told from parallel ones.",
  'why.rests-on-disputed': (p: { names: readonly string[] }) =>
    `It rests on ${many(p.names, ['is', 'are'])} disputed.`,
  'why.scale-unchecked': (p: { view: string; because: AnyReason }, say: Say) =>
    p.because.code === 'stretch.unlikely'
      ? `The scale of view "${p.view}" may be wrong. ${say(p.because)}`
      : `Nothing checks the scale of view "${p.view}": ${say(p.because)}`,
  'why.gives-back': (p: { id: string; basis: string }, say: Say) =>
    `Its ${say.item(`${basisWord(p.basis)} evidence`, p.id)} gives back a figured size that its view is scaled by: it measures nothing, and that it agrees is no agreement.`,
  'why.surer': (p: Told) => `The ${basisWord(p.basis)} value, ${p.written}, is surer.`,
  'why.too-uncertain': (p: Told) =>
    `The ${basisWord(p.basis)} value ${p.written} is too uncertain to say much.`,
  'why.not-usable': (p: { id: string; basis: string }, say: Say) =>
    `Its ${say.item(`${basisWord(p.basis)} evidence`, p.id)} can't be used.`,
  'why.figure-unread': (p: { id: string; text: string }) =>
    `The printed figure "${p.text}" can't be read and was not counted.`,
  'why.figure-hard-to-read': (_: { id: string }) => 'A printed figure that is hard to read was not counted.',
  'why.counts-once': (p: { id: string; of: string; basis: string }, say: Say) =>
    `${capital(say.item('evidence', p.id))} rests on ${onWhat(p.basis)} as ${say.item('evidence', p.of)}: the two count as one.`,
  'why.scale-from-figure': (p: { id: string }, say: Say) =>
    `${capital(say.item('scaled', p.id))} is by a scale that was taken from this figure: it follows the figure, right or wrong, and that it agrees says nothing.`,
  'why.does-not-close': (p: { relations: readonly Misses[] }, say: Say) =>
    `Part of ${p.relations.map((r) => `the ${nameOf(r, say)}, which is out by ${r.by}`).join(' and of ')}.`,
  'why.closes': (p: { relations: readonly Misses[] }, say: Say) =>
    p.relations.map((r) => `The ${nameOf(r, say)} ${r.sum ? 'adds up' : 'holds'}.`).join(' '),

  // Where the value is from
  'from.figure': (p: { chosen: boolean; doubtful?: boolean; of?: string }) =>
    `The printed figure${p.of === undefined ? '' : ` ${p.of}`}${p.doubtful ? ', which is hard to read,' : ''} governs${byChoice(p.chosen)}`,
  'from.formula': (p: { formula: string; chosen: boolean }) =>
    `Worked out from ${p.formula}${byChoice(p.chosen)}`,
  'from.sheet': (p: { values: number; chosen: boolean }) =>
    `${p.values === 1 ? 'Scaled off the sheet' : `Mean of ${p.values} scaled values`}${byChoice(p.chosen)}`,
  'from.original': (p: { values: number; chosen: boolean }) =>
    `${p.values === 1 ? 'Measured on the original' : `Mean of ${p.values} measurements of the original`}${byChoice(p.chosen)}`,
  'from.mean': (p: { values: number; chosen: boolean }) =>
    `Weighted mean of ${p.values === 1 ? 'one piece' : `${p.values} pieces`} of evidence${byChoice(p.chosen)}`,

  // How the rest agrees: goes on from where the value is from
  'agreement.alone': () => '; there is no other evidence',
  'agreement.within-limits': (p: { limits: readonly string[] }) =>
    `; it keeps to the printed ${p.limits.join(' and ')}, and there is no other evidence`,
  'agreement.nothing-else-tells': () => '; no other evidence says enough to check it',
  'agreement.nothing-else-legible': () => '; nothing else is legible',
  'agreement.all': (p: { others: number; shows: string | null }) =>
    `; the ${p.others} other pieces of evidence agree${shown(p.shows)}`,
  'agreement.one': (p: { other: string; shows: string | null }) =>
    `; the ${basisWord(p.other)} value agrees${shown(p.shows)}`,
  'agreement.among': (p: { shows: string | null }) => `; they agree${shown(p.shows)}`,
  'agreement.figure-twice': (p: { times: number }) =>
    p.times === 2 ? '; printed twice, the same' : `; printed ${p.times} times, the same`,
  'agreement.disputed': (p: { by: string; allowed: string | null; who: Told }) =>
    `, but ${told(p.who)} differs from it by ${p.by}${allowing(p.allowed)}`,
  'agreement.others-dispute': (p: { one: Told; other: Told; by: string; allowed: string | null }) =>
    `, but ${told(p.one)} and ${told(p.other)} differ by ${p.by}${allowing(p.allowed)}`,
  'agreement.stands-out': (p: { by: string; allowed: string | null }) =>
    `, but it differs from the rest, which agree, by ${p.by}${allowing(p.allowed)}`,
  'agreement.odd-ones': (p: { odd: readonly Told[]; by: string; allowed: string | null }) =>
    `, but ${p.odd.map(told).join(' and ')} ${p.odd.length > 1 ? 'differ from the rest, the first' : 'differs from the rest'} by ${p.by}${allowing(p.allowed)}`,
  'agreement.beyond-limit': (p: { limit: string; by: string; allowed: string | null }) =>
    `, but it is ${p.by} beyond the printed limit ${p.limit}${allowing(p.allowed)}`,
  'agreement.other-beyond-limit': (p: { who: Told; limit: string; by: string; allowed: string | null }) =>
    `, but ${told(p.who)} is ${p.by} beyond the printed limit ${p.limit}${allowing(p.allowed)}`,
} as const
