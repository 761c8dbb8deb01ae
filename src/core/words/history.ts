/** What the history of a job says was done, after the name of who did it: "adopted mean for drum_length". */
import { fieldWord, withoutValue } from './field-words.ts'
import { measureOf } from './measure-word.ts'
import { ordinalInWords } from './ordinal.ts'
import type { AnyReason, Say } from './reason.ts'

/** A value in words: as it is written, or what it comes to. */
type Written = string | AnyReason

const value = (written: Written, say: Say): string => (typeof written === 'string' ? written : say(written))

/** A field of a kind of thing, with what it held before and after; null: nothing. */
type Field = {
  readonly kind: string
  readonly field: string
  readonly before: Written | null
  readonly after: Written | null
}

const listed = (fields: readonly AnyReason[], say: Say): string => fields.map((one) => say(one)).join('; ')

const after = (before: Written | null, say: Say): string =>
  before === null ? '' : ` (before: ${value(before, say)})`

const saying = (says: Written | null, say: Say): string => (says === null ? '' : `: ${value(says, say)}`)

/** Of a thing: its noun and what it is called, and what it is within. */
type Called = { readonly name: string; readonly within: string }

const THINGS = {
  'thing.job': () => 'the job',
  'thing.by-name': (p: Called) => p.name,
  'thing.person': (p: Called) => `the person ${p.name}`,
  'thing.view': (p: Called) => `view “${p.name}”`,
  'thing.sheet': (p: Called) => `sheet “${p.name}”`,
  'thing.instrument': (p: Called) => `the instrument “${p.name}”`,
  'thing.evidence': (p: Called) => `${p.name} of ${p.within}`,
  'thing.reference': (p: Called) => `${p.name} of view “${p.within}”`,
} as const

/** Picks of a mark; pick: which one, counted from 1; null: `count` of them. */
type PicksOf = { readonly thing: AnyReason; readonly count: number; readonly pick: number | null }

const picksOf = ({ thing, count, pick }: PicksOf, say: Say): string =>
  `${pick === null ? `${count} picks` : `the ${ordinalInWords(pick)} pick`} of ${say(thing)}`

const px = (distance: number): string => `${distance.toFixed(1)} px`

const VALUES = {
  'value.points': (p: { count: number }) => `${p.count} point${p.count === 1 ? '' : 's'}`,
  'value.times': (p: { count: number }) => (p.count === 1 ? 'once' : `${p.count} times`),
  'value.yes-or-no': (p: { yes: boolean }) => (p.yes ? 'yes' : 'no'),
  'value.scaled': (p: { measure: string; marks: string; view: string }) =>
    `${measureOf(p.measure)} ${p.marks} in view “${p.view}”`,
  /** about, sheet: empty where it says none. */
  'value.note': (p: { text: string; about: string; sheet: string }) =>
    `“${p.text}”${p.about === '' ? '' : `, about ${p.about}`}${p.sheet === '' ? '' : `, on sheet “${p.sheet}”`}`,
  'value.stated-scale': (p: { scale: string }) => `${fieldWord('view', 'drawnScale')} ${p.scale}`,
  'value.picks-of': (p: PicksOf, say: Say) => picksOf(p, say),
  'value.quoted': (p: { text: string }) => `“${p.text}”`,
  'value.adopted-by': (p: { adopt: string; by: string }) => `${p.adopt}, by ${p.by}`,
  /** first: what the rules come to first of the evidence that there was then; null: not known. */
  'value.by-the-rules': (p: { first: readonly Written[] | null }, say: Say) => {
    if (p.first === null) return 'by the rules'
    if (p.first.length === 0) return 'by the rules, without evidence that counts by them'
    return `left to the rules, which take ${p.first.map((one) => value(one, say)).join(' and ')} first`
  },
  'value.with-figure': (p: { name: string; says: Written }, say: Say) => `${p.name} (${value(p.says, say)})`,
  'value.off-point': (p: { by: number }) => `${px(p.by)} from the pick before`,
  'value.off-line': (p: { by: number }) => `${px(p.by)} across it from the pick before`,
  'value.off-circle': (p: { centre: number; radius: number }) =>
    `its centre ${px(p.centre)} and its radius ${px(p.radius)} from the pick before`,
} as const

/** A thing, and what is to be said of it. */
type Told = { readonly thing: AnyReason; readonly says: Written | null }

export const HISTORY_WORDS = {
  ...THINGS,
  ...VALUES,

  'history.field': (p: Field, say: Say) => {
    const held = (written: Written | null): string =>
      written === null ? withoutValue(p.kind, p.field) : value(written, say)
    const [before, after] = [held(p.before), held(p.after)]
    return `${fieldWord(p.kind, p.field)} ${before === after ? after : `${before} → ${after}`}`
  },
  'history.field-only': (p: { kind: string; field: string }) => fieldWord(p.kind, p.field),

  'history.added': (p: Told, say: Say) => `added ${say(p.thing)}${saying(p.says, say)}`,
  'history.picked': (p: Told, say: Say) => `picked ${say(p.thing)}${saying(p.says, say)}`,
  'history.removed': (p: Told, say: Say) => `removed ${say(p.thing)}${saying(p.says, say)}`,
  'history.changed': (p: { thing: AnyReason; fields: readonly AnyReason[] }, say: Say) =>
    p.fields.length === 0
      ? `changed nothing of ${say(p.thing)}`
      : `changed ${say(p.thing)}: ${listed(p.fields, say)}`,
  /** That what a field holds was written as it was before. */
  'history.wrote-again': (p: { thing: AnyReason; fields: readonly AnyReason[] }, say: Say) =>
    p.fields.length === 0
      ? `changed nothing of ${say(p.thing)}`
      : `wrote again for ${say(p.thing)}: ${listed(p.fields, say)}`,
  'history.took-back-picks': (p: PicksOf, say: Say) => `took back ${picksOf(p, say)}`,
  /** says: what the evidence says that was adopted. */
  'history.adopted': (
    p: { thing: AnyReason; adopt: string; says: Written | null; before: Written | null },
    say: Say,
  ) => `adopted ${p.adopt} for ${say(p.thing)}${saying(p.says, say)}${after(p.before, say)}`,
  'history.left-to-the-rules': (p: { thing: AnyReason; before: Written | null }, say: Say) =>
    `left ${say(p.thing)} to the rules${after(p.before, say)}`,
  'history.withdrew': (p: { thing: AnyReason; why: string; before: string | null }, say: Say) =>
    `withdrew ${say(p.thing)}: ${p.why}${after(p.before, say)}`,
  'history.reinstated': (p: { thing: AnyReason; before: string | null }, say: Say) =>
    `reinstated ${say(p.thing)}${p.before === null ? '' : ` (withdrawn before: ${p.before})`}`,
  'history.dismissed': (p: { thing: AnyReason; read: string }, say: Say) =>
    `dismissed ${p.read === '' ? 'a figure' : `“${p.read}”`} on ${say(p.thing)}`,
  'history.recalled': (p: { thing: AnyReason; read: string }, say: Say) =>
    `showed ${p.read === '' ? 'a figure' : `“${p.read}”`} on ${say(p.thing)} again`,
  'history.renamed': (p: { before: string; after: string }) => `renamed ${p.before} to ${p.after}`,
  /** way: of a point from where to where, pixels. */
  'history.moved': (
    p: {
      thing: AnyReason
      distance: number
      way: { readonly from: string; readonly to: string } | null
      fields: readonly AnyReason[]
    },
    say: Say,
  ) => {
    const way = p.way === null ? '' : `, from ${p.way.from} to ${p.way.to} px`
    const more = p.fields.length === 0 ? '' : `; ${listed(p.fields, say)}`
    return `moved ${say(p.thing)} by ${p.distance.toFixed(1)} px${way}${more}`
  },
  'history.moved-row': (p: { thing: AnyReason; before: number | null; after: number }, say: Say) =>
    `moved ${say(p.thing)} ${p.before === null ? '' : `from row ${p.before} `}to row ${p.after}`,
  'history.moved-sheet': (p: { thing: AnyReason; before: number | null; after: number }, say: Say) =>
    `moved ${say(p.thing)} ${p.before === null ? '' : `from place ${p.before} `}to place ${p.after} of the set`,
  /** at: the place of a point; off: how far it is from the pick before. */
  'history.picked-again': (p: { thing: AnyReason; at: string | null; off: AnyReason | null }, say: Say) =>
    `picked ${say(p.thing)} again${p.at === null ? '' : ` at ${p.at}`}${p.off === null ? '' : `, ${say(p.off)}`}`,

  'history.took-back': (p: { n: number; what: AnyReason }, say: Say) => `took back ${p.n}: ${say(p.what)}`,
  'history.made-again': (p: { n: number; what: AnyReason }, say: Say) => `made ${p.n} again: ${say(p.what)}`,
} as const
