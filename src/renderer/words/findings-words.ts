/** Why there is no table, or no row of it, in sentences. */
export const FINDINGS_WORDS = {
  'findings.stopped': () =>
    'The part of the program that works out the table has stopped: reload the window. The job is safe.',
  'findings.fault': (p: { error: string }) =>
    `The table could not be worked out because of a fault in the program (${p.error}). The job is as it was; please report this.`,
} as const
