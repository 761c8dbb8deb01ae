import { FilePage } from './file-page.ts'
import type { GreyPage } from './grey-page.ts'
import type { PageSource } from './page-source.ts'
import { TilesPage } from './tiles-page.ts'

/** The greys of a page, wherever they come from. Nothing is read yet. */
export function openGreyPage({ size, from }: PageSource): GreyPage {
  return from.is === 'tiles' ? new TilesPage(from.folder, from.type) : new FilePage(from.file, size)
}
