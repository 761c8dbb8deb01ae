import { ordinal } from '../../words/ordinal.ts'
import { labelBesideId } from '../ids/label.ts'

/** What one entry of a list is called. */
const ENTRY: Readonly<Record<string, string>> = {
  people: 'person',
  instruments: 'instrument',
  sheets: 'sheet',
  views: 'view',
  marks: 'mark',
  dimensions: 'dimension',
  relations: 'relation',
  notes: 'note',
  references: 'figured size',
  evidence: 'evidence',
  readings: 'reading',
  candidates: 'candidate',
  repeats: 'repeated pick',
  repeatedBy: 'repeated pick',
  picks: 'pick',
  pixels: 'picked point',
  outline: 'corner',
  edits: 'edit',
  clear: 'field to clear',
}

const UNNAMED: Readonly<Record<string, string>> = { ...ENTRY, evidence: 'piece of evidence' }

/** An item by its label, or with its noun by its id or name: `circle 12`, `mark "M12"`; empty where it has none. */
function named(noun: string, value: unknown): string {
  if (typeof value !== 'object' || value === null) return ''
  const label = labelIn(value as Record<string, unknown>)
  if (label !== undefined) return label
  for (const key of ['id', 'name'] as const) {
    const name: unknown = (value as Record<string, unknown>)[key]
    if (typeof name === 'string' && name !== '' && name.length <= 80) return `${noun} ${JSON.stringify(name)}`
  }
  return ''
}

/** The label of what has a minted id, whatever else may be wrong with it. */
function labelIn({ id, number, kind, basis, name }: Record<string, unknown>): string | undefined {
  if (typeof id !== 'string') return undefined
  const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)
  return labelBesideId({
    id,
    number: typeof number === 'number' ? number : undefined,
    kind: text(kind),
    basis: text(basis),
    name: text(name),
  })
}

function field(parts: readonly string[]): string {
  return [...parts]
    .reverse()
    .map((part, i) => (i === 0 || part.startsWith('the ') ? part : `the ${part}`))
    .join(' of ')
}

/** The item that an edit adds, and what it is added to, the outermost first. */
function addedItem(edit: unknown, item: unknown): string[] {
  const { do: does, dimension, view } = edit as Record<string, unknown>
  const added = typeof does === 'string' ? does.replace(/^add-/, '') : 'item'
  const word = added === 'reference' ? 'figured size' : added
  const name = named(word, item)
  const inside: string[] = []
  if (typeof dimension === 'string') inside.push(`dimension ${JSON.stringify(dimension)}`)
  if (typeof view === 'string') inside.push(labelBesideId({ id: view }) ?? `view ${JSON.stringify(view)}`)
  return [...inside, name === '' ? `the new ${word}` : name]
}

/**
 * Where something stands in a document, in words: the item by its id, in what it is, then the field. An item without
 * an id is given by its position, counted from 1.
 * `['dimensions', 0, 'evidence', 1, 'text']` is `evidence "p1" of dimension "drum": text`, and `[]` is an empty string.
 *
 * @param whole the document, from which the ids come
 */
export function place(whole: unknown, path: readonly PropertyKey[]): string {
  const items: string[] = []
  let parts: string[] = []
  let value: unknown = whole
  for (const key of path) {
    const outer = value
    value =
      typeof outer === 'object' && outer !== null && Object.hasOwn(outer, key)
        ? (outer as Record<PropertyKey, unknown>)[key]
        : undefined
    let found: string[] = []
    if (typeof key === 'number') {
      const list = parts.pop() ?? 'list'
      const noun = ENTRY[list]
      const name = noun === undefined ? '' : named(noun, value)
      if (name !== '') found = [name]
      else {
        const entry = UNNAMED[list]
        parts.push(`the ${ordinal(key + 1)} ${entry ?? `entry of ${list}`}`)
      }
    } else if (key === 'item' && typeof outer === 'object' && outer !== null && 'do' in outer) {
      found = addedItem(outer, value)
    } else parts.push(key === 'worn' ? 'wear' : String(key))
    if (found.length === 0) continue
    if (parts.length > 0) items.push(field(parts))
    items.push(...found)
    parts = []
  }
  return [items.reverse().join(' of '), field(parts)].filter((part) => part !== '').join(': ')
}
