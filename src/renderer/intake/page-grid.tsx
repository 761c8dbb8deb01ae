import './page-grid.css'
import { Collection, GridList, GridListItem, GridListLoadMoreItem } from 'react-aria-components'
import type { PageLook, ScanLook } from '../../contract/scan-look.ts'
import { PageTile } from './page-tile.tsx'

interface PageGridProps {
  look: ScanLook
  chosen: ReadonlySet<number>
  onChoose: (chosen: ReadonlySet<number>) => void
  /** Whether further pages are being looked into. */
  loading: boolean
  /** Called when the end of those that were looked into comes in sight. */
  onMore: () => void
  /** Whether the pages are being taken in. */
  leaving: boolean
}

const spoken = ({ page, fault }: PageLook): string =>
  fault === undefined ? `Page ${page}` : `Page ${page}, which can’t be brought in`

/** The pages of a scan as small pictures, to be chosen by pointer or keys. */
export function PageGrid({ look, chosen, onChoose, loading, onMore, leaving }: PageGridProps) {
  const faulty = look.looked.filter(({ fault }) => fault !== undefined).map(({ page }) => page)
  return (
    <GridList
      className="page-grid"
      aria-label={`Pages of ${look.name}`}
      layout="grid"
      selectionMode="multiple"
      selectionBehavior="toggle"
      selectedKeys={chosen}
      disabledKeys={faulty}
      onSelectionChange={(keys) => {
        const pages = keys === 'all' ? look.looked.map(({ page }) => page) : [...keys].map(Number)
        onChoose(new Set(pages.filter((page) => !faulty.includes(page))))
      }}
    >
      <Collection items={look.looked.map((page) => ({ ...page, id: page.page }))} dependencies={[leaving]}>
        {(page) => (
          <GridListItem className="page-tile" textValue={spoken(page)}>
            {({ isSelected }) => (
              <PageTile upload={look.upload} page={page} chosen={isSelected} leaving={leaving} />
            )}
          </GridListItem>
        )}
      </Collection>
      <GridListLoadMoreItem className="page-grid-more" isLoading={loading} onLoadMore={onMore}>
        Looking into further pages…
      </GridListLoadMoreItem>
    </GridList>
  )
}
