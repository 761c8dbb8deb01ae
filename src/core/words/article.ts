/** A noun with its indefinite article, by its first letter: "an angle", "a point". Not for "uniform" and its like. */
export const article = (noun: string): string => (/^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`)
