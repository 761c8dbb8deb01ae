/** What people call a basis of evidence, or a rule of adoption, by its name in files: what is `found` there is measured. */
export const basisWord = (basis: string): string => (basis === 'found' ? 'measured' : basis)
