import type { ItemKind } from './meaning.ts'

/** What an edit can touch: the job itself, an item of one of its lists, evidence of a dimension, a figured size of a view. */
export type ThingKind = ItemKind | 'evidence' | 'reference' | 'job'
