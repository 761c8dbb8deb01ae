import { parseFormula } from '../../formula/formula.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { wordsOfFormula } from '../../formula/rename-in-formula.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import { type Whereabouts, walkMeanings } from '../model/walk-meanings.ts'

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

/** The names that a formula uses as it is read; none where it can't be read. */
function namesRead(text: string): readonly string[] {
  try {
    return parseFormula(text.trim()).names
  } catch (error) {
    if (error instanceof FormulaError) return []
    throw error
  }
}

/** All that a formula or a relation names, be it only in a remark: as it is written and, where it counts, as it is read. */
function namesIn(text: string, { holders }: Whereabouts): ReadonlySet<string> {
  const { withdrawn } = holders.at(-1) as { withdrawn?: string }
  const read = withdrawn === undefined ? text.split('=').flatMap(namesRead) : []
  return new Set([...wordsOfFormula(text), ...read])
}

/** Tells all that an item of a job names, and as what; some of it more than once. */
export function eachNamed(kind: ItemKind, item: object, tell: (as: NamedAs, name: string) => void): void {
  MENTIONS[kind].each(item, (text, meaning, at) => {
    if (meaning.is === 'reference') tell(meaning.to, text)
    else if (meaning.is === 'subject') tell('subject', text)
    else for (const name of namesIn(text, at)) tell('in a formula', name)
  })
}
