/** What a table says of its views and relations, and what a person should know before using it. Whole sentences. */
import { capital } from './capital.ts'
import { GAUGE_NAMES } from './gauge-names.ts'
import { mappingName, type NamedMapping } from './mapping-words.ts'
import type { AnyReason, Say } from './reason.ts'

/** Shown in the app, on every printed page and in every export. */
const STANDING_WORDS = {
  'caution.scaled-values-are-estimates': () =>
    'Values scaled from a print are estimates. Figured dimensions govern over scaled ones.',
  'caution.qualified-people-design': () =>
    'Parts that hold pressure, carry loads, brake, lift or conduct current must be designed and approved by qualified people under the rules in force.',
  'caution.old-assemblies-hold-hazards': () =>
    'Old assemblies may hold lead paint, asbestos packing, mercury or live wiring: find out before you open or cut them.',
} as const

/** The first of some names, and how many more there are. */
const listed = (names: readonly string[]): string => {
  const more = names.length - MOST_LISTED
  return more > 0 ? `${names.slice(0, MOST_LISTED).join(', ')} and ${more} more` : names.join(' and ')
}

const MOST_LISTED = 3

/** Whether two scales are apart by what an inch has of millimetres, as near as a scan's dpi tells. */
const unitsMixed = ({ stated, found }: { stated: number; found: number }): boolean =>
  Math.abs(Math.abs(Math.log(stated / found)) - Math.log(25.4)) < 0.1

export const TABLE_WORDS = {
  ...STANDING_WORDS,
  'caution.scale-not-known': (p: { view: string; dpi: number }) =>
    `View "${p.view}": neither its drawn scale nor the scan's dpi is known, so the draughting error was reckoned as at ${p.dpi} dpi. State one of the two.`,
  'caution.scale-contradicts-dpi': (p: { view: string; stated: number; found: number }) =>
    `View "${p.view}": it is said to be drawn to ${p.stated}, but by the scan's dpi it is ${p.found.toPrecision(2)}. ${unitsMixed(p) ? 'That is 25.4 times off: check its figured sizes for inches taken for millimetres, or the other way round.' : "Check both: a scale the wrong way up, a reduced copy, or a dpi that is not the scanner's?"} The larger draughting error was taken.`,
  'caution.picks-scatter': (p: { mark: string; s: number; sigma: number }, say: Say) =>
    `${capital(say.item('mark', p.mark))}: its picks scatter by ${p.s.toFixed(1)} px, more than their sigma of ${p.sigma} px allows. Pick it again, or state a larger sigma.`,
  'caution.people-differ': (p: { mark: string; people: number; within: number; between: number }, say: Say) =>
    `${capital(say.item('mark', p.mark))}: the ${p.people} people who picked it do not pick it alike: within one person's hand by ${p.within.toPrecision(2)} px, between people by ${p.between.toPrecision(2)} px. Agree on what is picked there, or have more people pick it.`,
  'caution.mark-off-its-page': (p: { mark: string; width: number; height: number }, say: Say) =>
    `${capital(say.item('mark', p.mark))} lies off its page of ${p.width} × ${p.height} pixels: pick it again.`,
  'caution.readings-far-apart': (
    p: { dimension: string; evidence: string; least: string; most: string },
    say: Say,
  ) =>
    `Dimension ${p.dimension}, ${say.item('evidence', p.evidence)}: its readings run from ${p.least} to ${p.most}: is there a slip in one of them?`,
  'caution.of-figure': (p: { dimension: string; evidence: string; question: AnyReason }, say: Say) =>
    `Dimension ${p.dimension}, ${say.item('figure', p.evidence)}: ${say(p.question)}`,
  'caution.gauge-unsaid': (p: { standard: keyof typeof GAUGE_NAMES; dimensions: readonly string[] }) =>
    `The job does not say which sheet gauge its numbers are of, so those of ${listed(p.dimensions)} were read by the ${GAUGE_NAMES[p.standard]}: which is it? Say it for the job, or write it in the figure, as in No. 16 B.W.G.`,
  'caution.of-view': (p: { view: string; problem: AnyReason }, say: Say) =>
    `View "${p.view}": ${say(p.problem)}`,

  'view.scale-unchecked': (p: { because: AnyReason }, say: Say) =>
    `Nothing checks this scale: ${say(p.because)}`,
  'view.not-calibrated': (p: { problem: AnyReason }, say: Say) => `Can't be calibrated: ${say(p.problem)}`,
  'view.other-mapping-suits': (p: { mapping: NamedMapping; suits: NamedMapping; gain: number }) =>
    `These figured sizes fit better as ${mappingName(p.suits)} than as ${mappingName(p.mapping)}.`,

  'relation.not-checked': (p: { problem: AnyReason }, say: Say) => `Not checked: ${say(p.problem)}`,
  'relation.needs-values': (p: { names: readonly string[] }) =>
    `${p.names.join(' and ')} ${p.names.length > 1 ? 'have' : 'has'} no value.`,
  'relation.without-value': () => 'its formulas have no value for these dimensions.',
  'relation.slack-of-another-kind': (p: { problem: AnyReason }, say: Say) =>
    `what it may miss by is not of its kind. ${say(p.problem)}`,
  'simulation.no-such-dimension': (p: { name: string }) => `There is no dimension ${p.name} to simulate.`,
  'simulation.without-value': (p: { name: string }) => `Dimension ${p.name} has no value to simulate.`,
  'simulation.of-exact-value': (p: { name: string }) =>
    `Dimension ${p.name} is taken as exact, so there is nothing to simulate.`,
  'simulation.mostly-without-value': (p: { name: string }) =>
    `Dimension ${p.name} has no value in most trials: its evidence is too uncertain to simulate.`,

  'relation.counts-have-no-slack': () => 'Counts and ratios either agree or do not: leave it out.',
} as const
