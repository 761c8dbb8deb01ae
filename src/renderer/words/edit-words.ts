/** What is said of an edit that a job does not take any more. */
export const EDIT_WORDS = {
  /** what: the name of the edit; written: the texts that were written for it, word for word. */
  'edit.not-kept': (p: { what: string; written: readonly string[] }) =>
    `Not kept, for the job can only be looked at now: ${p.what}.${p.written.length === 0 ? '' : ` What was written for it, to be copied from here:\n${p.written.join('\n')}`}`,
  'edit.for-looking-only': () => 'That was not done: the job can only be looked at now.',
} as const
