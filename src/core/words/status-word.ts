/** What people call the statuses of a dimension that files name otherwise. */
const WORDS: Readonly<Record<string, string>> = { single: 'unchecked', open: 'no value' }

/** What people call a status by its name in files: what is `single` there is unchecked, what is `open` has no value. */
export const statusWord = (status: string): string => WORDS[status] ?? status
