import { wordsOfFormula } from '../../formula/rename-in-formula.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import { walkMeanings } from '../model/walk-meanings.ts'

/**
 * As what a text names something: as an item of a kind, in a formula (also in one that is withdrawn), or as what a
 * note is about.
 */
export type NamedAs = ItemKind | 'in a formula' | 'subject'

const walkOf = (kind: ItemKind) => walkMeanings(ITEM_KINDS[kind].schema, 'reference', 'formula', 'subject')

/** The walk to all that names something in an item of each kind. */
export const MENTIONS = Object.fromEntries(ITEM_WORDS.map((kind) => [kind, walkOf(kind)])) as Readonly<
  Record<ItemKind, ReturnType<typeof walkOf>>
>

/** Tells all that an item of a job names, and as what; some of it more than once. */
export function eachNamed(kind: ItemKind, item: object, tell: (as: NamedAs, name: string) => void): void {
  MENTIONS[kind].each(item, (text, meaning) => {
    if (meaning.is === 'reference') tell(meaning.to, text)
    else if (meaning.is === 'subject') tell('subject', text)
    else for (const name of wordsOfFormula(text)) tell('in a formula', name)
  })
}
