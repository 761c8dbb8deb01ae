import { beginningOf } from './id-form.ts'
import type { Mint } from './mint-ids.ts'

/**
 * Gives ids that are numbers, `N1`, `N2`, for whoever has no chance to give: another copy of the job gives the same.
 * They begin at 1, whether or not that is taken.
 */
export function countingIds(): Mint {
  const last = new Map<string, number>()
  return (kind) => {
    const letter = beginningOf(kind).charAt(0).toUpperCase()
    const number = (last.get(letter) ?? 0) + 1
    last.set(letter, number)
    return `${letter}${number}`
  }
}
