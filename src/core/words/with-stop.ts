/** Words with a full stop at their end. */
export const withStop = (words: string): string => (/[.!?]\s*$/.test(words) ? words : `${words}.`)
