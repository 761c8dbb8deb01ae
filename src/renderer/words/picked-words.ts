/** What stands in the way of keeping what was picked, or of taking away what was, in sentences. */
import type { AnyReason, Say } from '../../core/words/reason.ts'

export const PICKED_WORDS = {
  'picked.other-corners': (p: { wanted: number; given: number }) =>
    `It was picked with ${p.wanted} corners, and this pick has ${p.given}: cancel it and pick the same corners.`,
  'picked.flat-outline': () =>
    'The two corners lie on one line: cancel this and pick corners that are opposite each other.',
  'picked.no-old-mark': () =>
    'Shift takes a mark that is there already, and none that would do lies there: let Shift go to pick anew.',
  'picked.taken-already': (p: { what: string }) =>
    `That is on ${p.what}, which was taken whole: pick what comes next.`,
  'picked.same-again': (p: { kind: 'line' | 'circle' | 'round end' }) =>
    `That is the same ${p.kind} again, and was not taken: pick the other one.`,
  'picked.end-not-seen': (p: { because: AnyReason }, say: Say) =>
    `From this one pick no round end was found. ${say(p.because)} Or pick two more points on its rim.`,
  'picked.ends-differ': (p: { one: string; other: string }) =>
    `The two ends are not of one size: ⌀ ${p.one} and ⌀ ${p.other}. The width is their mean; is it one slot, and was the same edge read at both?`,
  'picked.mark-in-use': () => 'It can’t be removed while something rests on it.',
} as const
