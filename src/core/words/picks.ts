/** Why what was picked is no mark, in words: goes on from a place or a name, without a stop. */
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
    `it is a ${p.kind}, and says it was found as a ${p.as}`,
  'mark.found-with-too-few': (p: { as: string; least: number; given: number }) =>
    `it says it was found as a ${p.as}, which is looked for by ${p.least} rough picks or more, and has ${p.given}`,
  'mark.more-people-than-repeats': (p: { people: number; repeats: number }) =>
    `it says who picked it again ${p.people} times, and has ${p.repeats} repeated picks`,
} as const
