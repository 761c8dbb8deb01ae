/** What is wrong with something that was written in a field, in sentences. */
export const WRITTEN_WORDS = {
  'written.size-of-nothing': () => 'A size is greater than 0.',
  'written.no-known-size': () => 'A figured size can’t be empty.',
  'written.no-view-name': () => 'A view needs a name.',
  'written.no-sheet-title': () => 'A sheet needs a title.',
  'written.no-note': () => 'A note needs words: write some, or remove the note.',
  'written.no-dimension-name': () => 'A dimension needs a name: write one, or press Escape.',
  'written.no-label': () => 'Say what this is in a few words, or press Escape.',
  'written.no-count': () => 'How many off is a whole number from 1 up.',
  'written.no-sigma': () => 'Pixels: a number greater than 0, e.g. 1.5.',
  'written.no-per-cent': () => 'Write it in per cent, as in 0.5 %.',
  'written.no-dpi': (p: { example: number }) =>
    `Dots per inch is a number greater than 0, e.g. ${p.example}.`,
  /** now: what the job has by now; said of a field of one line. */
  'written.changed-elsewhere': (p: { now: string }) =>
    `Changed elsewhere to “${p.now}” meanwhile: Enter keeps what is written here, Esc takes theirs.`,
  /** Of a field of several lines, in which Enter begins another. */
  'written.text-changed-elsewhere': (p: { now: string }) =>
    `Changed elsewhere to “${p.now}” meanwhile: leaving the field keeps what is written here, Esc takes theirs.`,
  'written.row-gone': (p: { name: string; text: string }) =>
    `The row ${p.name} was removed elsewhere while it was written in, so this was not kept: ${p.text}`,
  'written.not-kept': () => 'Not kept yet: Enter tries again, Esc leaves it as it was.',
  'written.only-looking': () => 'Not kept, for the job is read-only now: copy it from here. Esc cancels it.',
  'written.no-cause': () => 'Say why: the reason stays with the evidence.',
  'written.name-taken': (p: { name: string }) => `There is a dimension ${p.name} already.`,
  'written.no-formula': () =>
    'A formula can’t be empty: on the card it is withdrawn where it no longer counts.',
  'written.worked-out': () =>
    'This is worked out from the evidence: change that on the card of the dimension.',
} as const
