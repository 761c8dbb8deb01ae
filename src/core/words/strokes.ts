/** Why no stroke was found, in sentences; and why a place on one does not count, the end of a sentence. */
import type { ReasonOf } from './reason.ts'

/** To a tenth, as the places of picks are told. */
const inPixels = (pixels: number): string => `${Number(pixels.toFixed(1))} px`

const BY_HAND = 'Pick by hand, or go nearer.'

const NO_STROKE_WORDS = {
  'stroke.picks-too-near': (p: { least: number }) =>
    `The two picks are less than ${p.least} px apart. Pick them farther apart.`,
  'stroke.picks-on-one-line': () =>
    'The three picks are on one line or too near one another. Pick them farther apart.',
  'stroke.none-within': (p: { reach: number }) =>
    `No stroke was seen within ${inPixels(p.reach)}. ${BY_HAND}`,
  'stroke.none-along-line': () => `No stroke was seen along this way. ${BY_HAND}`,
  'stroke.none-along-circle': () => `No stroke was seen along this circle. ${BY_HAND}`,
  'stroke.no-crossing-within': (p: { reach: number }) =>
    `No two strokes that cross or meet were seen within ${inPixels(p.reach)}. ${BY_HAND}`,
  'stroke.crossing-too-far': (p: { away: number; reach: number }) =>
    `The strokes here cross ${p.away.toFixed(1)} px from the pick, and no farther than ${inPixels(p.reach)} is looked. Pick nearer to where they cross.`,
  'stroke.one-round': () =>
    'What is here is one round stroke and no crossing. Pick it as a single stroke, or go nearer.',
  'stroke.ground-as-uneven': () => `The ground is as uneven as this all about. ${BY_HAND}`,
  'stroke.no-round-end': () =>
    'No round end that joins two straight sides was seen here. Pick nearer to the top of the end.',
  'stroke.unsettled': () => `What is here does not settle to a stroke. ${BY_HAND}`,
  'stroke.unsettled-circle': () => `What is here does not settle to a circle. ${BY_HAND}`,
  'stroke.too-little-agrees': (p: { seen: number }) =>
    `No clear stroke here: only ${Math.round(p.seen)} px of it agree. ${BY_HAND}`,
  'stroke.too-faint': () => `Too faint to be told from its ground here. ${BY_HAND}`,
  'stroke.too-soft': () => `What is here is too soft for a stroke: a stain or a shadow, perhaps. ${BY_HAND}`,
  'stroke.blot': () => `What is here is as wide as it is long: a blot, perhaps. ${BY_HAND}`,
  'stroke.not-above-ground': () =>
    `Nothing here stands out clearly from the unevenness of the ground. ${BY_HAND}`,
  'stroke.no-steady-course': () => `What is here has no steady course. ${BY_HAND}`,
  'stroke.one-edge': () =>
    `There is one edge here and no other: the border of an area, not a stroke. ${BY_HAND}`,
  'stroke.paper-between': () => `What is here is the paper between two strokes. Pick nearer to one of them.`,
  'stroke.texture': () =>
    `The same lines repeat all over here: the texture of the ground, perhaps. ${BY_HAND}`,
} as const

const PROFILE_WORDS = {
  'profile.off-scan': () => 'the picture ends here',
  'profile.broken': () => 'the stroke is broken here',
  'profile.beyond-end': () => 'the stroke does not reach here',
  'profile.crossed': () => 'something crosses or touches it here',
  'profile.fainter': () => 'it is fainter here',
  'profile.stronger': () => 'it is stronger here',
  'profile.wider': () => 'it is wider here',
  'profile.narrower': () => 'it is narrower here',
  'profile.stained': () => 'the ground is stained beside it here',
  'profile.aside': () => 'it lies aside of the rest here',
  'profile.other-stroke': () => 'the other stroke is here',
} as const

/** Why there is no clear stroke. */
export type NoStrokeReason = ReasonOf<typeof NO_STROKE_WORDS>
/** Why a place where a stroke was looked at across itself does not count. */
export type ProfileReason = ReasonOf<typeof PROFILE_WORDS>

export const STROKE_WORDS = { ...NO_STROKE_WORDS, ...PROFILE_WORDS } as const
