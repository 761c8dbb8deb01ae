/** The rules by which a value can be adopted for a dimension; anything else in `adopt` is the id of evidence. */
export const ADOPTION_RULES: ReadonlySet<string> = new Set(['printed', 'scaled', 'found', 'derived', 'mean'])
