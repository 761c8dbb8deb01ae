/** Why a mark or a measure of marks comes to nothing. */
import type { AnyReason, Say } from './reason.ts'

export const MEASURING_WORDS = {
  'feature.no-such-mark': (p: { mark: string }) => `There is no mark ${p.mark}.`,
  'feature.of-mark': (p: { mark: string; problem: AnyReason }, say: Say) =>
    `Mark ${p.mark}: ${say(p.problem)}`,
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
  'measure.path-crosses-itself': (p: { mark: string }) =>
    `Path ${p.mark} crosses itself, so the area inside it is not determined.`,
  'measure.path-encloses-nothing': (p: { mark: string }) => `Path ${p.mark} encloses nothing.`,
  'measure.marks-on-one-line': () => 'The two marks lie on one line, so there is no spacing.',
  'measure.lines-not-parallel': (p: { marks: readonly [string, string]; degrees: number }) =>
    `Lines ${p.marks.join(' and ')} are ${p.degrees.toFixed(1)}° from parallel, so they have no one spacing; measure from a line to a point.`,
  'measure.beyond-all-bounds': (p: { measure: string; marks: readonly string[] }) =>
    `The ${p.measure} of ${p.marks.join(' and ')} comes out beyond all bounds: check their picks.`,
  'measure.arc-too-short': (p: { measure: string; marks: readonly string[] }) =>
    `The picks of ${p.marks.join(' and ')} cover too short an arc: its ${p.measure} would be uncertain by more than a quarter. Pick more of the circle.`,
  'measure.lines-too-short': (p: { marks: readonly string[] }) =>
    `Lines ${p.marks.join(' and ')} are too short for the angle between them: it would be uncertain by more than 20°. Pick more of them.`,
} as const
