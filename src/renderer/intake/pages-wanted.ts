import type { PageLook } from '../../contract/scan-look.ts'
import type { ChosenPages } from './choose-pages.ts'

/**
 * The pages to ask for, in order. A page that was not looked into yet is taken for drawn, or for scanned, where all
 * those that were are; of a file that has both, its resolution is left as the file has it.
 * @param drawnAt dots per inch of drawn pages
 * @param dpi what scanned pages have, where a person says so
 */
export function pagesWanted(
  chosen: Iterable<number>,
  looked: readonly PageLook[],
  { drawnAt, dpi }: { drawnAt: number; dpi: number | undefined },
): NonNullable<ChosenPages['pages']> {
  const made = new Map(looked.map((look) => [look.page, look.made]))
  const kinds = new Set(made.values())
  const [kind] = kinds
  const others = kinds.size === 1 ? kind : undefined
  return [...chosen]
    .sort((a, b) => a - b)
    .map((page) => {
      const is = made.get(page) ?? others
      if (is === 'drawn') return { page, drawnAt }
      return is === 'scanned' && dpi !== undefined ? { page, dpi } : { page }
    })
}
