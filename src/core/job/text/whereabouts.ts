import { place } from './place.ts'

/** Where something stands in a document, as a part of a reason: its path, and the place in words. */
export interface Where {
  where: string
  path: (string | number)[]
}

/** The place of something in a document: its path, and in words (see `place`). */
export const whereIn = (document: unknown, path: readonly PropertyKey[]): Where => ({
  where: place(document, path),
  path: path.map((key) => (typeof key === 'number' ? key : String(key))),
})
