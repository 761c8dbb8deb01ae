/** A sentence as a part of a longer one. */
export const withoutStop = (sentence: string): string =>
  sentence.endsWith('.') ? sentence.slice(0, -1) : sentence
