/** What may be wrong with a job, in sentences. */
import { article } from './article.ts'
import { capital } from './capital.ts'
import type { Where } from './documents.ts'
import { FORMULA_WORDS } from './formula.ts'
import { ordinal } from './ordinal.ts'
import { quoted } from './quoted.ts'
import type { AnyReason, Say } from './reason.ts'

const inAlternatives = (needs: readonly (readonly string[])[]): string =>
  needs.map((need) => need.map((kind) => `a ${kind}`).join(' and ')).join(', or ')

/** Nouns of what a quantity is to be written as. */
const NOUNS = {
  length: 'a length',
  angle: 'an angle',
  area: 'an area',
  count: 'a count',
  'length or angle': 'a length or an angle',
  slack: 'a length, an angle or an area',
  tolerance: 'a tolerance',
  'tolerance of an angle': 'a tolerance of an angle',
} as const

export type QuantityNoun = keyof typeof NOUNS

/** What is wrong at a place of a job: goes on from that place, without a stop. */
const AT_A_PLACE = {
  'job.no-such-item': (p: { id: string; kind: string }, say: Say) =>
    `is ${quoted(say.label(p.id))}, and the job has no such ${p.kind}`,
  'job.not-among-people': (p: { id: string }, say: Say) =>
    `is ${quoted(say.label(p.id))}, who is not among the people of this job: add them, or correct the id`,
  'job.stands-twice': (p: { first: number; second: number; key: string }) =>
    `stands twice in its list, ${ordinal(p.first)} and ${ordinal(p.second)}: give one of them another ${p.key}`,
  'job.no-name-for-formulas': () =>
    'has a name that formulas cannot use: write letters a to z, digits and underscores, not starting with a digit',
  'job.name-reserved': () => 'has a name that already means something in formulas: give it another',
  'job.id-is-a-rule': () => 'has the name of a rule of adoption for its id: give it another',
  'job.adopts-nothing': (p: { adopt: string; rules: readonly string[] }, say: Say) =>
    `is ${quoted(say.label(p.adopt))}, which is neither a rule (${p.rules.join(', ')}) nor the id of evidence for this dimension`,
  'job.nested-too-deep': (p: { most: number }) => `is nested more than ${p.most} deep`,
  'job.too-few-corners': () => 'must have three corners or more',
  'job.count-is-scaled': () =>
    'is scaled, but a count is not measured: count it, or change the kind of the dimension',
  'job.measure-of-another-kind': (p: { measure: string; gives: string; kind: string }) =>
    `is "${p.measure}", which gives ${article(p.gives)}, but the dimension is ${article(p.kind)}`,
  'job.number-of-marks': (p: { needs: readonly (readonly string[])[]; what: string; given: number }) =>
    `must be ${inAlternatives(p.needs)} for ${p.what}, and ${p.given} marks are named`,
  'job.kinds-of-marks': (p: {
    needs: readonly (readonly string[])[]
    what: string
    given: readonly string[]
  }) =>
    `must be ${inAlternatives(p.needs)} for ${p.what}, and this is ${p.given.map((kind) => `a ${kind}`).join(' and ')}`,
  'job.mark-on-another-sheet': (p: { mark: string; sheet: string; of: string }, say: Say) =>
    `is ${quoted(say.label(p.mark))}, a mark on ${say.quotedItem('sheet', p.sheet)}, but the view is on ${say.quotedItem('sheet', p.of)}`,
  'job.same-mark-twice': (p: { mark: string }, say: Say) =>
    `names ${say.quotedItem('mark', p.mark)} twice: pick the other one`,
  'job.mark-not-sound': (p: { problem: AnyReason }, say: Say) => `is not sound: ${say(p.problem)}`,
  'job.nothing-or-less': (p: { text: string }) => `is ${quoted(p.text)}, and must be greater than 0`,
} as const

/** What is wrong with a job as a whole, or where in it. */
export const JOB_WORDS = {
  ...AT_A_PLACE,
  'job.unsound': (p: Where & { problem: AnyReason }, say: Say) =>
    `${p.where === '' ? 'The job' : p.where} ${say(p.problem)}.`,
  'job.not-written-as': (p: Where & { noun: QuantityNoun; problem: AnyReason }, say: Say) => [
    `${p.where} is not written as ${NOUNS[p.noun]}.`,
    ...say.sentences(p.problem),
  ],
  'job.not-a-job': () =>
    'This is not a Scantling job: a job is a JSON object with "format": "scantling-job".',
  'job.other-format': (p: { format: string | null }) =>
    `This is not a Scantling job: its "format" ${p.format === null ? 'is missing' : `is ${p.format}`}, not "scantling-job".`,
  'job.no-version': () => 'The job has no "version", so it cannot be read safely.',
  'job.version-is-none': (p: { version: string }) =>
    `version must be a whole number of 1 or more, and is ${p.version}.`,
  'job.newer': (p: { version: number; newest: number }) =>
    `The job was written by a newer Scantling (format version ${p.version}; this one reads up to ${p.newest}): open it with that, nothing was changed.`,
  'job.no-migration': (p: { version: number; from: number }) =>
    `The job is of format version ${p.version}, and this Scantling has no way from version ${p.from} to ${p.from + 1}: nothing was changed.`,
  /** called: what people call it, with its noun; null: its id. */
  'job.in-use': (
    p: { kind: string; id: string; called: string | null; by: string; first: string },
    say: Say,
  ) => `${capital(p.called ?? say.quotedItem(p.kind, p.id))} is used by ${p.by}: ${p.first} that first.`,
  'job.bare-quantities': (p: {
    before: string
    after: string
    where: string
    text: string
    count: number
  }) => {
    const many = p.count === 1 ? 'is written without its unit' : 'and others are written without a unit'
    const all = p.count === 1 ? '' : ` (${p.count} in all)`
    return `The unit can't be changed from ${p.before} to ${p.after}, because ${p.where} ${quoted(p.text)} ${many}${all} and would mean another size: write their units first, as in ${quoted(`${p.text} ${p.before}`)}.`
  },
  'formula.of-evidence': (p: { dimension: string; evidence: string; problem: AnyReason }, say: Say) =>
    `Dimension "${p.dimension}", ${say.quotedItem('evidence', p.evidence)}: ${say(p.problem)}.`,
  'formula.of-relation': (p: { relation: string; problem: AnyReason }, say: Say) =>
    `${capital(say.quotedItem('relation', p.relation))}: ${say(p.problem)}.`,
  'formula.circle-to-break': (p: { names: readonly string[] }) => [
    FORMULA_WORDS['formula.circle'](p),
    'Change or withdraw one of these formulas.',
  ],
  'formula.of-another-kind': (p: { text: string; gives: string; wanted: string }) =>
    / to the power | times /.test(p.gives)
      ? `the formula \`${p.text}\` does not give ${p.wanted}: check its powers and roots`
      : `the formula \`${p.text}\` gives ${p.gives}, but the dimension is ${p.wanted}`,
  'formula.relation-mixes-units': (p: { text: string; left: string; right: string }) =>
    `\`${p.text}\` mixes units: ${p.left} = ${p.right}; both sides must be of one kind`,
  'formula.no-such-name': (p: { text: string; name: string }) =>
    `\`${p.text}\` uses ${p.name}, but no dimension has that name`,
} as const
