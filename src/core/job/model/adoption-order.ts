import type { Basis } from './types.ts'

/** Rules of adoption, in the order in which they are tried when none is chosen. */
export const ADOPTION_ORDER: readonly Basis[] = ['printed', 'derived', 'scaled', 'found']
