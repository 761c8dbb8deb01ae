import { basisWord } from './basis-word.ts'
import { type IdKind, mintedFor } from './id-form.ts'
import type { Numbered } from './new-identity.ts'

/** What a kind of thing is called in a label; marks go by what they are, evidence by its basis. */
const WORDS: Readonly<Record<IdKind, string>> = {
  person: 'person',
  instrument: 'instrument',
  sheet: 'sheet',
  view: 'view',
  mark: 'mark',
  reference: 'figured size',
  evidence: 'evidence',
  relation: 'relation',
  note: 'note',
}

/** Something that is called by a label: what is needed of it for that. */
export interface Labelled extends Numbered {
  /** Of a mark or a reference. */
  readonly kind?: string | undefined
  /** Of evidence. */
  readonly basis?: string | undefined
  /** Of a person or an instrument. */
  readonly name?: string | undefined
}

const basisOf = ({ basis }: Labelled): string | undefined =>
  basis === undefined ? undefined : basisWord(basis)

/** As much of a minted id as tells it from its neighbours, where it has no number. */
const tailOf = (id: string): string => id.slice(-4)

/**
 * The label of something, by which people know it: `circle 12`, `figured size 2`, `scaled 1`; of somebody and of an
 * instrument the name. An id that was not minted is its own label.
 */
export function labelOf(item: Labelled): string {
  const kind = mintedFor(item.id)
  if (kind === undefined) return item.id
  if ((kind === 'person' || kind === 'instrument') && item.name) return item.name
  const word = (kind === 'mark' ? item.kind : kind === 'evidence' ? basisOf(item) : undefined) ?? WORDS[kind]
  return `${word} ${item.number ?? tailOf(item.id)}`
}

/** The label of something that is not called by its id; undefined where the id is the label. */
export const labelBesideId = (item: Labelled): string | undefined =>
  mintedFor(item.id) === undefined ? undefined : labelOf(item)

/** The label of something of which only the id is known: `mark 5tzb`. */
export const labelOfId = (id: string): string => labelOf({ id })

/** A label where the noun stands before it already: `12` of circle 12, else the id. */
export const afterNoun = (item: Numbered): string =>
  mintedFor(item.id) === undefined ? item.id : String(item.number ?? tailOf(item.id))

/** The thing that goes by an id, or alone by a label or the number in it, as a person may say it. */
export function itemCalled<T extends Labelled>(items: readonly T[], said: string): T | undefined {
  const by = items.find(({ id }) => id === said)
  if (by !== undefined) return by
  const [only, another] = items.filter((item) => labelOf(item) === said || afterNoun(item) === said)
  return another === undefined ? only : undefined
}

/**
 * A noun before the label that goes with an id: `mark M12`, `person A. Rivet`; a label that has a noun of its own
 * stands alone, `circle 12`.
 */
export function withNoun(noun: string, id: string, label: string): string {
  const kind = mintedFor(id)
  return kind === undefined || kind === 'person' || kind === 'instrument' ? `${noun} ${label}` : label
}

/** Something with its noun, see `withNoun`. */
export const called = (noun: string, item: Labelled): string => withNoun(noun, item.id, labelOf(item))
