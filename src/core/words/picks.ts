/** Why what was picked is no mark, or not what is to be made of it, in words without a stop; some go on from a place. */
import { article } from './article.ts'
import type { AnyReason, Say } from './reason.ts'

export const PICK_WORDS = {
  'mark.too-few-picks': (p: { name: string; least: number; given: number }) =>
    `a ${p.name} needs ${p.least} picked points or more, and this has ${p.given}`,
  'mark.all-the-same': (p: { name: string }) =>
    `all points of this ${p.name} are the same: pick at least two different ones`,
  'mark.in-a-repeat': (p: { repeat: number; problem: AnyReason }, say: Say) =>
    `in its repeated pick ${p.repeat}, ${say(p.problem)}`,
  'mark.no-covariance': (p: { covariance: readonly number[] }) =>
    `its covariance [${p.covariance.join(', ')}] is none: xy² is larger than xx·yy`,
  'mark.sigma-and-covariance': (p: { sigma: number; worst: number }) =>
    `its sigma is ${p.sigma} px, and by its covariance it would be ${p.worst.toPrecision(2)} px: sigma is that of the worse direction`,
  'mark.found-as-another': (p: { kind: string; as: string }) =>
    `it is a ${p.kind}, and says it was found as ${article(p.as)}`,
  'mark.found-with-too-few': (p: { as: string; least: number; given: number }) =>
    `it says it was found as ${article(p.as)}, which is looked for by ${p.least} rough picks or more, and has ${p.given}`,
  'mark.more-people-than-repeats': (p: { people: number; repeats: number }) =>
    `it says who picked it again ${p.people} times, and has ${p.repeats} repeated picks`,
  'mark.picks-said-otherwise': (p: { field: string }) =>
    `its "${p.field}" and its "picks" do not say the same: take away "picks", and they are made anew of the other fields, or make the two say the same`,
  'picks.rests-on-it': (p: { dimension: string; mark: string }) =>
    `“${p.dimension}” rests on ${p.mark} already, and what agrees with itself checks nothing: pick it anew, without Shift.`,
  'picks.other-marks': (p: { what: string; wanted: readonly string[]; given: number }) =>
    `${article(p.what)} is picked by ${p.wanted.length === 1 ? `one mark (${p.wanted[0]})` : `${p.wanted.length} marks (${p.wanted.join(', ')})`}, and this has ${p.given}: pick all of them, and no other`,
  'picks.one-end-twice': () => 'Both picks are on one round end: a slot has two, so pick the other one',
  'picks.no-slot-size': () => 'No size of the slot is ticked: tick one to keep',
  'picks.not-on-its-stroke': (p: { mark: string }, say: Say) =>
    `${say.item('mark', p.mark)} is on a stroke, and none was found under this pick: pick nearer to the stroke, or put the mark back by hand first`,
  'picks.another-kind': (p: { mark: string; kind: string; given: string }, say: Say) =>
    `${say.item('mark', p.mark)} is a ${p.kind}, and a ${p.given} was given for it: pick a ${p.kind}`,
  'picks.never-pointed-at': (p: { mark: string }, say: Say) =>
    `${say.item('mark', p.mark)} does not know where a hand pointed to find it: pick it anew`,
} as const
