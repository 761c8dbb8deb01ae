import { mintedFor } from '../../core/job/ids/id-form.ts'

/** What an edit says that no hand wrote: which things it is about, who made it and how it is to be read. */
const NOT_BY_HAND: ReadonlySet<string> = new Set([
  'do',
  'id',
  'by',
  'at',
  'basis',
  'kind',
  'view',
  'sheet',
  'dimension',
  'mark',
  'marks',
  'measure',
  'sitting',
  'sha256',
  'mapping',
  'unit',
  'instrument',
  'legibility',
  'about',
  'adopt',
  'stroke',
  'clear',
])

/** The texts that were written for an edit, word for word, each once. */
export function writtenIn(edit: object): string[] {
  const found = new Set<string>()
  const gather = (value: unknown): void => {
    if (typeof value === 'string') {
      if (value.trim() !== '' && mintedFor(value) === undefined) found.add(value)
    } else if (Array.isArray(value)) value.forEach(gather)
    else if (typeof value === 'object' && value !== null) {
      for (const [name, one] of Object.entries(value)) if (!NOT_BY_HAND.has(name)) gather(one)
    }
  }
  gather(edit)
  return [...found]
}
