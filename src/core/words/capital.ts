/** With a capital at its start. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
