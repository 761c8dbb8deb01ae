import type { Where } from '../../words/documents.ts'
import { place } from './place.ts'

/** The place of something in a document, as a part of a reason: its path, and in words (see `place`). */
export const whereIn = (document: unknown, path: readonly PropertyKey[]): Where => ({
  where: place(document, path),
  path: path.map((key) => (typeof key === 'number' ? key : String(key))),
})
