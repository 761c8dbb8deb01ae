/** Why a mark or a measure of marks comes to nothing. */
import { capital } from './capital.ts'
import { measureOf, measureWord } from './measure-word.ts'
import type { AnyReason, Say } from './reason.ts'

/** `Lines M3 and M4`; of those that have labels, `Line 3 and line 4`. */
function bothLines(marks: readonly string[], say: Say): string {
  const labels = marks.map(say.label)
  return labels.every((label, i) => label === marks[i])
    ? `Lines ${labels.join(' and ')}`
    : capital(labels.map((label, i) => (label === marks[i] ? `line ${label}` : label)).join(' and '))
}

export const MEASURING_WORDS = {
  'feature.no-such-mark': (p: { mark: string }, say: Say) => `There is no ${say.item('mark', p.mark)}.`,
  'feature.of-mark': (p: { mark: string; problem: AnyReason }, say: Say) =>
    `${capital(say.item('mark', p.mark))}: ${say(p.problem)}`,
  'feature.open-path-too-short': () => 'A path needs two points or more.',
  'feature.closed-path-too-short': () => 'A closed path needs three points or more.',
  'feature.corners-differ': (p: { once: number; another: number }) =>
    `It was picked with ${p.once} points once and with ${p.another} another time, so there is no mean of them: every pick needs the same corners.`,

  'measure.mark-missing': () => 'A mark is missing from the measure.',
  'measure.circle-missing': () => 'A circle is missing from the measure.',
  'measure.angle-of-two-lines': () => 'An angle needs two lines.',
  'measure.area-of-a-path': () => 'An area needs a closed path.',
  'measure.run-of-a-path': () => 'A run needs a path.',
  'measure.spacing-of-two-marks': () => 'A spacing needs two marks.',
  'measure.points-coincide': () => 'The two points are one and the same, so there is no distance.',
  'measure.path-is-a-point': () => 'All points of the path are one and the same.',
  'measure.path-crosses-itself': (p: { mark: string }, say: Say) =>
    `${capital(say.item('path', p.mark))} crosses itself, so the area inside it is not determined.`,
  'measure.path-encloses-nothing': (p: { mark: string }, say: Say) =>
    `${capital(say.item('path', p.mark))} encloses nothing.`,
  'measure.marks-on-one-line': () => 'The two marks lie on one line, so there is no spacing.',
  'measure.lines-not-parallel': (p: { marks: readonly [string, string]; degrees: number }, say: Say) =>
    `${bothLines(p.marks, say)} are ${p.degrees.toFixed(1)}° from parallel, so they have no one spacing; measure from a line to a point.`,
  'measure.beyond-all-bounds': (p: { measure: string; marks: readonly string[] }, say: Say) =>
    `The ${measureOf(p.measure)} ${p.marks.map(say.label).join(' and ')} comes out beyond all bounds: check their picks.`,
  'measure.arc-too-short': (p: { measure: string; marks: readonly string[] }, say: Say) =>
    `The picks of ${p.marks.map(say.label).join(' and ')} cover too short an arc: its ${measureWord(p.measure)} would be uncertain by more than a quarter. Pick more of the circle.`,
  'measure.lines-too-short': (p: { marks: readonly string[] }, say: Say) =>
    `${bothLines(p.marks, say)} are too short for the angle between them: it would be uncertain by more than 20°. Pick more of them.`,
} as const
