/** What is wrong with a piece of evidence, or keeps a dimension from having a value. Whole sentences. */

import { basisWord } from '../job/ids/basis-word.ts'
import { capital } from './capital.ts'
import { GAUGE_NAMES } from './gauge-names.ts'
import type { AnyReason, Say } from './reason.ts'
import { withStop } from './with-stop.ts'

const ROUND_BY = {
  scaled: 'what was scaled',
  printed: 'its other figures',
  name: 'its name',
}

const NUMBERS = 'nought one two three four five six seven eight nine ten eleven twelve'.split(' ')

const inWordsUpToTwelve = (written: string): string =>
  (/^\d+$/.test(written) && NUMBERS[Number(written)]) || written

const OF = {
  diameter: 'A diameter',
  radius: 'A radius',
  centres: 'Between centres',
  square: 'The side of a square',
}

const LOOSE = {
  about: 'about that size, a graduation more or less',
  full: 'a little over that size',
  bare: 'a little under that size',
}

export const EVIDENCE_WORDS = {
  'evidence.withdrawn': (p: { why: string }) => withStop(`Withdrawn: ${p.why}`),
  'evidence.hard-to-read': () =>
    'Hard to read, so it is not adopted by itself: adopt it once you are sure of the reading, or withdraw it.',
  'evidence.read-at-edges': (p: {
    edges: readonly { of: string; edge: 'edge' | 'inner edge' | 'outer edge' }[]
  }) =>
    `Read at ${p.edges.map(({ of, edge }) => `the ${edge} of ${of}`).join(' and ')}, not along the middle of the stroke.`,
  'evidence.ends-differ': (p: { percent: number }) =>
    `The two round ends are not of one size: one is ${p.percent < 10 ? p.percent.toFixed(1) : Math.round(p.percent)} % larger, more than their picks allow, and the width is their mean.`,
  'evidence.not-read': () => 'It was not read.',
  'evidence.figure-of-another-kind': (p: { kind: string; wanted: string }) =>
    `The dimension is of kind ${p.kind}, so its figure must be ${p.wanted}.`,
  'evidence.one-sided-limit': (p: { limit: 'max' | 'min'; written: string }) =>
    `It says that the size is ${p.limit === 'max' ? 'at most' : 'at least'} ${p.written} and not what it is, so other evidence must give that and is held against it.`,
  'evidence.slope-is-no-length': (p: { text: string; rise: string; run: string }) =>
    `"${p.text}" is a slope or a taper, ${inWordsUpToTwelve(p.rise)} inch${Number(p.rise) > 1 ? 'es' : ''} in ${inWordsUpToTwelve(p.run)}, and no length: write it in a note, or as the angle of a dimension that is one.`,
  'evidence.slope-of-two-angles': (p: { text: string }) =>
    `"${p.text}" is a slope or a taper, on one side or on both: write the angle that is meant.`,
  'evidence.without-readings': () => 'It has no readings yet.',
  'evidence.instrument-unnamed': (p: { text: string }) =>
    `No instrument is named, so its ± is a coarse one: by the last place that is written in ${p.text}, and a tenth of a millimetre or a quarter of a degree that the instrument may be off by. Name what it was taken with.`,
  'evidence.readings-slip': (p: { least: string; most: string }) =>
    `${p.least} and ${p.most} can't both be readings of one size: correct the one that slipped (a lost comma, another unit?).`,
  'evidence.readings-differ': (p: { texts: readonly string[] }) =>
    `${p.texts.join('; ')} differ by far more than they are written to. Is there a slip in one of them, or is the face rough there?`,
  'evidence.readings-coarse': (p: { texts: readonly string[] }) =>
    `${p.texts.join(', ')} ${p.texts.length === 1 ? 'is' : 'are'} written more coarsely than the rest, and ${p.texts.length === 1 ? 'counts' : 'count'} for little beside it.`,
  'evidence.readings-apart': (p: { instrument: string | null }) =>
    `Its readings scatter much more than the others${p.instrument === null ? '' : ` with ${p.instrument}`}, so that its ± goes by them alone. Is there a slip in one of them, or is the face rough there?`,
  'evidence.scatter-guessed': (p: { instrument: string; by: 'limit' | 'step' }) =>
    `Nothing was read twice with ${p.instrument} yet, so how far its readings scatter is a guess by ${p.by === 'limit' ? 'its limit of error' : 'its resolution'}. Take a second reading of any size.`,
  'evidence.no-such-view': (p: { view: string }, say: Say) => `There is no ${say.item('view', p.view)}.`,
  'evidence.view-not-calibrated': (p: { name: string; view: string; problem: AnyReason }, say: Say) =>
    withStop(`View "${p.name}" (${say.label(p.view)}) can't be calibrated: ${say(p.problem)}`),
  'evidence.gives-back-a-reference': (p: { name: string; view: string }, say: Say) =>
    `It gives back a size that the scale of view "${p.name}" (${say.label(p.view)}) was taken from, so nothing is ` +
    'measured by it: measure another distance, or give the view one more figured size.',
  'evidence.needs-values': (p: { names: readonly string[] }) =>
    `It needs ${p.names.join(' and ')}, which ${p.names.length > 1 ? 'have' : 'has'} no value yet.`,

  // Of figures that are read and used: what was made of them, and what is asked
  'question.radius-for-diameter': (p: { text: string; by: 'scaled' | 'printed' | 'name' }) =>
    `"${p.text}" is a radius, and this dimension is a diameter by ${ROUND_BY[p.by]}: is the diameter twice that?`,
  'question.diameter-for-radius': (p: { text: string; by: 'scaled' | 'printed' | 'name' }) =>
    `"${p.text}" is a diameter, and this dimension is a radius by ${ROUND_BY[p.by]}: is the radius half that?`,
  'question.fraction-of-no-rule': (p: { text: string; parts: number }) =>
    `No rule is divided into ${p.parts} parts of an inch: is the fraction of "${p.text}" read rightly?`,
  'question.count-or-section': (p: { text: string }) =>
    `"${p.text}" was read as a number of things and their size: is it a section, one size by the other? Write the one that is meant then.`,
  'question.count-differs': (p: { text: string; count: number; counted: number }) =>
    `"${p.text}" says that there are ${p.count}, and the dimension says ${p.counted}: which is right?`,
  'question.fit-of-two': (p: { fit: string }) =>
    `${p.fit} is the fit of a hole and a shaft: which of the two is this? Write that class alone, so that its limits count.`,
  'question.not-to-scale': (p: { text: string }) =>
    `"${p.text}" is said not to be drawn to scale: what is scaled off the sheet says nothing for or against it. Is any such evidence to be withdrawn?`,
  'remark.gauge-by-usual-table': (p: { number: string; standard: keyof typeof GAUGE_NAMES }) =>
    `No. ${p.number} was read by the ${GAUGE_NAMES[p.standard]}, since neither the figure nor the job says which gauge is meant.`,
  'question.fit-not-in-table': (p: { fit: string }) =>
    `The limits of ${p.fit} are not in the table here, so nothing is held against them: what are they? Write them in its place, for instance 20 +0.015/+0.002.`,
  'question.fraction-of-a-millimetre': (p: { text: string }) =>
    `"${p.text}" is read as a fraction of a millimetre, which nobody draws to: is it in inches? Write its unit.`,
  'question.thousands': (p: { text: string; mm: number; thousand: number }) =>
    `"${p.text}" is read as ${p.mm} mm: does its point part thousands, so that it is ${p.thousand} mm? Write it without the point then.`,
  'remark.loose': (p: { text: string; looseness: 'about' | 'full' | 'bare' }) =>
    `"${p.text}" is ${LOOSE[p.looseness]}: it is not taken as exact.`,
  'remark.reference-dimension': (p: { text: string }) =>
    `"${p.text}" is a reference dimension: no tolerance applies to it.`,

  // How a figure is understood, beside its size
  'understood.of': (p: { of: 'diameter' | 'radius' | 'centres' | 'square'; side?: 'outside' | 'inside' }) =>
    p.side === undefined ? `${OF[p.of]}.` : `An ${p.side} diameter.`,
  'understood.fastener': (p: { fastener: string }) => `It is the size of ${p.fastener}.`,
  'understood.thread': (p: { form: string; perInch?: number; pitch?: string }) =>
    p.form === 'M'
      ? `A metric thread${p.pitch === undefined ? '' : ` of ${p.pitch} mm pitch`}: the size is nominal.`
      : `A thread${p.perInch === undefined ? '' : ` of ${p.perInch} to the inch`}, ${withStop(p.form)} The size is nominal.`,
  'understood.notes': (p: { notes: readonly string[] }) => withStop(`Kept as a note: ${p.notes.join(', ')}`),

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
    `A ${basisWord(p.basis)} value is to be adopted, but there is no usable evidence for it.`,
  'adoption.chosen-unusable': (p: { id: string; problem: AnyReason | null }, say: Say) =>
    `${capital(say.item('evidence', p.id))} is to be adopted, but it can't be used: ${p.problem === null ? 'it has no value.' : withStop(say(p.problem))}`,
} as const
