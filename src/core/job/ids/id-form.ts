/** The kinds of things that go by an id, each with the letter that ids of its kind begin with. */
const LETTERS = {
  person: 'p',
  instrument: 'i',
  sheet: 's',
  view: 'v',
  mark: 'm',
  reference: 'r',
  evidence: 'e',
  relation: 'q',
  note: 'n',
} as const

/** A kind of thing that goes by an id; dimensions go by their names. */
export type IdKind = keyof typeof LETTERS

export const ID_KINDS = Object.keys(LETTERS) as readonly IdKind[]

/** Digits and letters that no hand takes for one another, and no vowel among them: no word comes about by chance. */
export const ALPHABET = '23456789bcdfghjkmnpqrstvwxyz'

/** Characters of each id after its letter: 28^13 is more than 2^62. */
export const LENGTH = 13

/** The beginning of ids of a kind: `m-` of marks. */
export const beginningOf = (kind: IdKind): string => `${LETTERS[kind]}-`

const KINDS = new Map<string, IdKind>(
  Object.entries(LETTERS).map(([kind, letter]) => [letter, kind as IdKind]),
)
const MINTED = new RegExp(`^([${Object.values(LETTERS).join('')}])-[${ALPHABET}]{${LENGTH}}$`)

/** The kind that an id was minted for; undefined for one that a person gave, or that an older program numbered. */
export function mintedFor(id: string): IdKind | undefined {
  const letter = MINTED.exec(id)?.[1]
  return letter === undefined ? undefined : KINDS.get(letter)
}
