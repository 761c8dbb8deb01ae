import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { limitInWords } from './limits-in-words.ts'
import { type PagePart, pageWithin } from './page-in-words.ts'

const count = (number: number, what: string): string =>
  `${number.toLocaleString('en')} ${what}${number === 1 ? '' : 's'}`

/** How many places could not be read, where any could not. */
const without = (failed: number): string =>
  failed === 0 ? '' : ` ${count(failed, 'place')} could not be read.`

/** How many figures of a sheet are seen, and how many of them are clear. */
function seenAndClear(figures: number, clear: number): string {
  if (figures === 0) return 'no figure seen'
  if (figures === 1) return `1 figure seen, ${clear === 1 ? 'and it is clear' : 'and it is doubtful'}`
  const those = clear === figures ? 'all' : clear.toLocaleString('en')
  return `${count(figures, 'figure')} seen, ${those} of them clear`
}

/** What is said of the reading of figures. */
export const FIGURE_WORDS = {
  // A box
  'figures.box-outside': (p: { width: number; height: number }) =>
    `That box lies off the page, which has ${p.width} × ${p.height} pixels: put it round a figure on the page.`,
  'figures.box-too-small': (p: { least: number }) =>
    `That box is less than ${p.least} pixels wide or high, too small for a figure: drag it round the whole figure.`,
  'figures.box-too-large': (p: { most: number }) =>
    `That box is more than ${p.most.toLocaleString('en')} pixels wide or high, much larger than a figure: drag it close round one.`,

  // Why not
  'figures.not-read': (p: PagePart & { because: AnyReason }, say) =>
    `The figures of ${pageWithin(p)} can't be read because ${say(p.because)}.`,

  // After "because"
  'figures.no-program': () =>
    'the program that reads figures is not there: build the project with "npm run build"',
  'figures.not-started': () => 'the process that reads them could not be started: try again',
  'figures.ended-early': (p: { how: string }) =>
    `the process that reads them ended early (${p.how}): try again`,
  'figures.too-slow': (p: { allowed: number }) =>
    `reading takes longer than ${limitInWords('seconds', p.allowed)}: give a smaller box, or raise the limit "seconds"`,
  'figures.too-much-memory': (p: { most: number }) =>
    `reading takes more than the ${limitInWords('memory', p.most)} that it may use: raise the limit "memory"`,

  // How far the reading of a sheet is
  'figures.unread': () => 'Nothing was read of this sheet yet.',
  'figures.looking': (p: { done: number; of: number }) =>
    `Looking for figures: ${count(p.of, 'place')} found so far, ${p.done.toLocaleString('en')} read.`,
  'figures.reading': (p: { done: number; of: number }) =>
    `Reading figures: ${p.done.toLocaleString('en')} of ${count(p.of, 'place')}.`,
  /** figures: places where something is written. clear: those of them that read clearly. failed: places that could not be read */
  'figures.ready': (p: { figures: number; clear: number; failed: number }) =>
    `The sheet was read: ${seenAndClear(p.figures, p.clear)}.${without(p.failed)}`,
  'figures.stopped': (p: { done: number; of: number }) =>
    `The reading was stopped with ${p.done.toLocaleString('en')} of ${count(p.of, 'place')} read, and can go on from there.`,
  /** left: doubtful figures that are still to be read again */
  'figures.again': (p: { left: number }) =>
    `More is known of the hand by now: ${count(p.left, 'doubtful figure')} to be read again.`,
  'figures.again-stopped': (p: { left: number }) =>
    `Reading again was stopped with ${count(p.left, 'doubtful figure')} left as it was read before: go on, or go through them as they are.`,

  // The hand of a sheet. known: figures taken on it
  'figures.hand-unknown': () =>
    'Nothing is known of the hand of this sheet yet: each figure that you take shows how it writes.',
  'figures.hand-of-one': () =>
    'One figure of this sheet is taken: with a second one it is read with its own hand.',
  'figures.hand-next': (p: { known: number }) =>
    `What is read next is read with the hand of the ${count(p.known, 'figure')} taken on this sheet.`,
  /** figures: of them, those that it was learned from */
  'figures.hand': (p: { known: number; figures: number }) =>
    p.figures >= p.known
      ? `Reads with the hand of ${count(p.known, 'figure')} taken on this sheet.`
      : `Reads with the hand of ${p.figures.toLocaleString('en')} of ${count(p.known, 'figure')} taken on this sheet.`,
  'figures.hand-of-nobody': (p: { known: number }) =>
    `The ${count(p.known, 'figure')} taken on this sheet do not make its hand easier to read so far: it is read as any other.`,
  'figures.hand-off': (p: { known: number }) =>
    `Reads without the hand of the ${count(p.known, 'figure')} taken on this sheet.`,
} as const satisfies Catalogue
