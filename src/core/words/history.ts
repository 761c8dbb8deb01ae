/** What the history of a job says was done, after the name of who did it: "adopted mean for drum_length". */
import type { AnyReason, Say } from './reason.ts'

/** What fields are called, where people have another word for them than the file. */
const FIELDS: Readonly<Record<string, string>> = {
  about: 'what it is about',
  adoptedAt: 'when it was adopted',
  adoptedBy: 'who adopted it',
  annotation: 'where it came from',
  at: 'when',
  box: 'place on the sheet',
  by: 'who',
  candidates: 'what it could be',
  closed: 'whether it closes',
  count: 'how many alike',
  covariance: 'how surely',
  drawnAt: 'drawn at',
  drawnScale: 'stated scale',
  draughting: 'draughting error',
  file: 'scan',
  how: 'how it was picked',
  limit: 'maximum error',
  loss: 'loss to wear',
  orientation: 'how the scan asks to be turned',
  pixel: 'place',
  pixels: 'place',
  repeatedBy: 'who picked again',
  repeats: 'picked again',
  sha256: 'checksum of the scan',
  straight: 'direction of its horizontal edge',
  stroke: 'what it was found on',
  u: 'uncertainty',
  withdrawn: 'why it no longer counts',
  withdrawnAt: 'when it was withdrawn',
  withdrawnBy: 'who withdrew it',
}

const fieldWord = (field: string): string => FIELDS[field] ?? field

/** A value in words: as it is written, or what it comes to. */
type Written = string | AnyReason

const value = (written: Written | null, say: Say): string =>
  written === null ? 'none' : typeof written === 'string' ? written : say(written)

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
  'thing.view': (p: Called) => `view "${p.name}"`,
  'thing.sheet': (p: Called) => `sheet "${p.name}"`,
  'thing.instrument': (p: Called) => `the instrument "${p.name}"`,
  'thing.evidence': (p: Called) => `${p.name} of ${p.within}`,
  'thing.reference': (p: Called) => `${p.name} of view "${p.within}"`,
} as const

const VALUES = {
  'value.points': (p: { count: number }) => `${p.count} point${p.count === 1 ? '' : 's'}`,
  'value.times': (p: { count: number }) => (p.count === 1 ? 'once' : `${p.count} times`),
  'value.yes-or-no': (p: { yes: boolean }) => (p.yes ? 'yes' : 'no'),
  'value.scaled': (p: { measure: string; marks: string; view: string }) =>
    `${p.measure} of ${p.marks} in view "${p.view}"`,
  'value.adopted-by': (p: { adopt: string; by: string }) => `${p.adopt}, by ${p.by}`,
} as const

/** A thing, and what is to be said of it. */
type Told = { readonly thing: AnyReason; readonly says: Written | null }

export const HISTORY_WORDS = {
  ...THINGS,
  ...VALUES,

  'history.field': (p: { field: string; before: Written | null; after: Written | null }, say: Say) =>
    `${fieldWord(p.field)} ${value(p.before, say)} → ${value(p.after, say)}`,
  'history.field-only': (p: { field: string }) => fieldWord(p.field),

  'history.added': (p: Told, say: Say) => `added ${say(p.thing)}${saying(p.says, say)}`,
  'history.picked': (p: Told, say: Say) => `picked ${say(p.thing)}${saying(p.says, say)}`,
  'history.removed': (p: Told, say: Say) => `removed ${say(p.thing)}${saying(p.says, say)}`,
  'history.changed': (p: { thing: AnyReason; fields: readonly AnyReason[] }, say: Say) =>
    `changed ${say(p.thing)}: ${listed(p.fields, say) || 'nothing'}`,
  'history.adopted': (p: { thing: AnyReason; adopt: string; before: Written | null }, say: Say) =>
    `adopted ${p.adopt} for ${say(p.thing)}${after(p.before, say)}`,
  'history.left-to-the-rules': (p: { thing: AnyReason; before: Written | null }, say: Say) =>
    `left ${say(p.thing)} to the rules${after(p.before, say)}`,
  'history.withdrew': (p: { thing: AnyReason; why: string; before: string | null }, say: Say) =>
    `withdrew ${say(p.thing)}: ${p.why}${after(p.before, say)}`,
  'history.reinstated': (p: { thing: AnyReason; before: string | null }, say: Say) =>
    `reinstated ${say(p.thing)}${p.before === null ? '' : ` (withdrawn before: ${p.before})`}`,
  'history.renamed': (p: { before: string; after: string }) => `renamed ${p.before} to ${p.after}`,
  'history.moved': (p: { thing: AnyReason; distance: number; fields: readonly AnyReason[] }, say: Say) => {
    const more = p.fields.length === 0 ? '' : `; ${listed(p.fields, say)}`
    return `moved ${say(p.thing)} by ${p.distance.toFixed(1)} px${more}`
  },
  'history.moved-row': (p: { thing: AnyReason; before: number | null; after: number }, say: Say) =>
    `moved ${say(p.thing)} ${p.before === null ? '' : `from row ${p.before} `}to row ${p.after}`,
  'history.picked-again': (p: { thing: AnyReason }, say: Say) => `picked ${say(p.thing)} again`,

  'history.took-back': (p: { n: number; what: AnyReason }, say: Say) => `took back ${p.n}: ${say(p.what)}`,
  'history.made-again': (p: { n: number; what: AnyReason }, say: Say) => `made ${p.n} again: ${say(p.what)}`,
} as const
