import './sheet-list.css'
import { Button } from 'react-aria-components'
import { pictureAddress } from '../../../contract/picture-addresses.ts'
import type { PictureProgress } from '../../../contract/pictures.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { showSheet } from '../../bench/choose.ts'
import { theHost } from '../../bench/the-host.ts'
import { Icon } from '../../parts/icon.tsx'

/** The sheets of the job; pressing one puts it on the bench. */
export function SheetList({ sheets }: { sheets: readonly Sheet[] }) {
  const chosen = useBench((bench) => bench.sheet)
  if (sheets.length === 0) {
    return <p>A sheet is one page of one scan. This job has none yet.</p>
  }
  return (
    <ul>
      {sheets.map((sheet) => (
        <li key={sheet.id}>
          <Button
            className="block-one-of sheet-list-one"
            aria-current={sheet.id === chosen || undefined}
            onPress={() => void showSheet(sheet.id)}
          >
            <Thumbnail sheet={sheet.id} />
            <span>
              <span className="sheet-list-title">{sheet.title}</span>
              <span className="block-soft">
                {sheet.scan.width} × {sheet.scan.height} px
                {sheet.scan.dpi === undefined ? '' : `, ${sheet.scan.dpi} dpi`}
              </span>
            </span>
          </Button>
        </li>
      ))}
    </ul>
  )
}

const MADE: ReadonlySet<PictureProgress['state']> = new Set(['tiles', 'ready', 'stopped'])

/** A small picture of a sheet, once it is made. */
function Thumbnail({ sheet }: { sheet: string }) {
  const version = useBench(({ pictures }) => {
    const there = pictures[sheet]
    return there === undefined || !MADE.has(there.progress.state) ? undefined : there.version
  })
  return (
    <span className="sheet-list-picture">
      {version === undefined ? (
        <Icon name="sheet" large />
      ) : (
        <img src={theHost().pictureUrl(pictureAddress({ kind: 'thumbnail', sheet, version }))} alt="" />
      )}
    </span>
  )
}
