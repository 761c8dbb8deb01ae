/** what: the name of the edit; written: the texts that were written for it, word for word. */
type NotKept = { what: string; written: readonly string[] }

const wholly = ({ what, written }: NotKept): string =>
  `${what}.${written.length === 0 ? '' : ` What was written for it, to be copied from here:\n${written.join('\n')}`}`

/** What is said of what is chosen, and of an edit that a job does not take any more. */
export const EDIT_WORDS = {
  'choice.card-waits': (p: { name: string }) =>
    `The card of ${p.name} is shown once what is in hand is kept or cancelled.`,
  'edit.not-kept': (p: NotKept) => `Not kept, for the job is read-only now: ${wholly(p)}`,
  /** Once it can be written again. */
  'edit.can-be-kept': (p: NotKept) =>
    `Not kept yet, and it can be now, for the job can be written again: ${wholly(p)}`,
  'edit.close-loses': () =>
    'Not closed, for something that was written is not kept yet: keep it, or close the job once more to leave without it.',
  'edit.for-looking-only': () => 'That was not done: the job is read-only now.',
} as const
