import { capital } from './capital.ts'
import { quoted } from './quoted.ts'
import type { AnyReason, Catalogue, ReasonOf } from './reason.ts'

/** What is said of notes that go out as annotations or come in from some, and of what could not be kept of them. */
export const ANNOTATION_WORDS = {
  // A file that gives nothing
  'annotation.no-notes': () => 'This job has no notes, so there is nothing to hand on: write one first.',
  'annotation.not-json': () =>
    'This file is not JSON, so no annotations could be read from it: choose one that holds Web Annotations (JSON-LD).',
  'annotation.none': () => [
    'This file is JSON, but holds no Web Annotations: nothing was brought in.',
    'Choose a file with an annotation, a page or a collection of them.',
  ],
  'annotation.pages-elsewhere': () =>
    'This file only says where its annotations are kept, and nothing is fetched from elsewhere: choose the file of its first page.',
  'annotation.too-many-people': (p: { most: number }) =>
    `This file names more than ${p.most} people who are not of this job: nothing was brought in.`,

  // Remarks on the whole
  'annotation.times': (p: { remark: AnyReason; times: number }, say) =>
    `${say(p.remark)} (${p.times} times.)`,
  'annotation.further-pages': () =>
    'Further pages of these annotations are kept in other files: bring those in as well.',
  'annotation.already-here': (p: { notes: number }) =>
    `${p.notes === 1 ? 'One note was' : `${p.notes} notes were`} in this job already and stayed as before.`,

  // What was not kept of an annotation
  'annotation.first-of-choice': () => 'Of several bodies to choose from, the first was kept.',
  'annotation.empty-body': () => 'A body without any text was not brought in.',
  'annotation.body-elsewhere': () =>
    'A body that is kept elsewhere was not fetched: its address is in the note.',
  'annotation.markup': () => 'A text with markup was kept as it is written, as plain text.',
  'annotation.unknown-fields': () => 'Fields of a note that no job can hold were not brought in.',
  'annotation.no-date': (p: { created: string }) =>
    `A moment that is no date was not brought in: ${quoted(p.created)}.`,
  'annotation.first-creator': () => 'Of several creators, the first is named.',
  'annotation.id-taken': (p: { id: string; instead: string }, say) =>
    `${capital(say.quotedItem('note', p.id))} is in this job already and says something else: the other is ${say.label(p.instead)}.`,

  // Why one was left out
  'annotation.left-out': (p: { annotation: string | null; why: AnyReason }, say) =>
    `${p.annotation === null ? 'An annotation' : `Annotation ${quoted(p.annotation)}`} was not brought in: ${say(p.why)}.`,
  'annotation.no-target': () => 'it has no target',
  'annotation.unknown-picture': () => 'it is about a picture that is no sheet of this job',
  'annotation.unnamed-target': () => 'it does not say what it is about',
  'annotation.selector-elsewhere': () => 'its selector is kept elsewhere',
  'annotation.region-elsewhere': () => 'its region is kept elsewhere',
  'annotation.unknown-fragment': (p: { fragment: string }) =>
    `its fragment “${p.fragment}” is not understood here`,
  'annotation.unknown-selector': (p: { type: string | null }) =>
    `its ${p.type ?? 'selector'} does not select a region of a picture`,

  // Regions that are drawn
  'annotation.unknown-transform': () =>
    'its region is moved or turned by a transform, which is not understood here',
  'annotation.inner-canvas': () =>
    'its region is drawn on a canvas within its canvas, which is not understood here',
  'annotation.nested-too-deep': () => 'its region is nested deeper than in any sound drawing',
  'annotation.too-many-corners': (p: { most: number }) =>
    `its region has more than ${p.most} corners, and no outline needs so many`,
  'annotation.no-shape': () => 'its region has no shape that is understood here',
  'annotation.malformed-shape': () => 'its region is not written as SVG has it',
  'annotation.first-shape': (p: { shapes: number }) =>
    `Of a region of ${p.shapes} shapes, the first was kept.`,
  'annotation.circle-straightened': (p: { sides: number }) =>
    `A circle was made a polygon of ${p.sides} sides.`,
  'annotation.curves-straightened': () => 'Curves of a region were made straight.',
  'annotation.other-proportions': () =>
    'The canvas of a region has other proportions than its page: its numbers were taken as pixels.',
} as const satisfies Catalogue

/** What is said of annotations, as data. */
export type AnnotationReason = ReasonOf<typeof ANNOTATION_WORDS>
