/** What is wrong with a piece of evidence, or keeps a dimension from having a value. Whole sentences. */
import { capital } from './capital.ts'
import type { AnyReason, Say } from './reason.ts'
import { withStop } from './with-stop.ts'

export const EVIDENCE_WORDS = {
  'evidence.withdrawn': (p: { why: string }) => withStop(`Withdrawn: ${p.why}`),
  'evidence.hard-to-read': () => 'Hard to read, so it is not adopted by itself: settle its reading first.',
  'evidence.not-read': () => 'It was not read.',
  'evidence.figure-of-another-kind': (p: { kind: string; wanted: string }) =>
    `The dimension is of kind ${p.kind}, so its figure must be ${p.wanted}.`,
  'evidence.without-readings': () => 'It has no readings yet.',
  'evidence.no-such-view': (p: { view: string }, say: Say) => `There is no ${say.item('view', p.view)}.`,
  'evidence.view-not-calibrated': (p: { name: string; view: string; problem: AnyReason }, say: Say) =>
    withStop(`View "${p.name}" (${say.label(p.view)}) can't be calibrated: ${say(p.problem)}`),
  'evidence.gives-back-a-reference': (p: { name: string; view: string }, say: Say) =>
    `It gives back a size that the scale of view "${p.name}" (${say.label(p.view)}) was taken from, so nothing is ` +
    'measured by it: measure another distance, or give the view one more known size.',
  'evidence.needs-values': (p: { names: readonly string[] }) =>
    `It needs ${p.names.join(' and ')}, which ${p.names.length > 1 ? 'have' : 'has'} no value yet.`,

  'adoption.nothing-yet': () => 'There is no evidence yet.',
  'adoption.without-value': () => 'Its evidence has no value.',
  'adoption.none-usable': (
    p: { evidence: readonly { readonly id: string; readonly problem: AnyReason | null }[] },
    say: Say,
  ) =>
    `None of its ${p.evidence.length} pieces of evidence can be used: ${p.evidence
      .map(
        ({ id, problem }) => `${say.label(id)}: ${problem === null ? 'no value.' : withStop(say(problem))}`,
      )
      .join(' ')}`,
  'adoption.no-usable-mean': () => 'The mean is to be adopted, but there is no usable evidence for it.',
  'adoption.no-usable-basis': (p: { basis: string }) =>
    `A ${p.basis} value is to be adopted, but there is no usable evidence for it.`,
  'adoption.chosen-unusable': (p: { id: string; problem: AnyReason | null }, say: Say) =>
    `${capital(say.item('evidence', p.id))} is to be adopted, but it can't be used: ${p.problem === null ? 'it has no value.' : withStop(say(p.problem))}`,
} as const
