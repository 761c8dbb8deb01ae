/** A share in per cent, as a person writes it: `0.5 %`. */
export const PER_CENT = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*%\s*$/

export const isPerCent = (text: string): boolean => PER_CENT.test(text)
