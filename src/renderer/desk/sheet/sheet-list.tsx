import './sheet-list.css'
import { type KeyboardEvent, useState } from 'react'
import { Button } from 'react-aria-components'
import { frontAddress, scanVersion } from '../../../contract/picture-addresses.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { showSheet } from '../../bench/choose.ts'
import { theHost } from '../../bench/the-host.ts'
import { Icon } from '../../parts/icon.tsx'
import { moveSheet } from './move-sheet.ts'

/** What a sheet that is dragged goes by. */
const DRAGGED = 'application/x-scantling-sheet'

const STEPS: Readonly<Record<string, number>> = { ArrowUp: -1, ArrowDown: 1 }

/** The sheets of the job; pressing one puts it on the bench. By its grip, or by Alt and an arrow, one goes elsewhere in the set. */
export function SheetList({ sheets, writable }: { sheets: readonly Sheet[]; writable: boolean }) {
  const chosen = useBench((bench) => bench.sheet)
  const [over, setOver] = useState<number | null>(null)
  if (sheets.length === 0) {
    return <p>A sheet is one page of one scan. This job has none yet.</p>
  }
  const canMove = writable && sheets.length > 1
  const pressed = (event: KeyboardEvent, sheet: Sheet, at: number): void => {
    const step = STEPS[event.key]
    if (!canMove || !event.altKey || step === undefined) return
    event.preventDefault()
    moveSheet(sheet.id, at + step)
  }
  return (
    <ul>
      {sheets.map((sheet, at) => (
        <li
          key={sheet.id}
          className="sheet-list-row"
          data-over={over === at || undefined}
          onKeyDownCapture={(event) => pressed(event, sheet, at)}
          onDragOver={(event) => {
            if (!canMove || !event.dataTransfer.types.includes(DRAGGED)) return
            event.preventDefault()
            setOver(at)
          }}
          onDragLeave={() => setOver(null)}
          onDrop={(event) => {
            setOver(null)
            const id = event.dataTransfer.getData(DRAGGED)
            if (!canMove || id === '') return
            event.preventDefault()
            moveSheet(id, at)
          }}
        >
          <Button
            className="block-one-of sheet-list-one"
            aria-current={sheet.id === chosen || undefined}
            {...(canMove ? { 'aria-keyshortcuts': 'Alt+ArrowUp Alt+ArrowDown' } : {})}
            onPress={() => void showSheet(sheet.id)}
          >
            <Thumbnail sheet={sheet} />
            <span>
              <span className="sheet-list-title">{sheet.title}</span>
              <span className="block-soft">
                {sheet.scan.width} × {sheet.scan.height} px
                {sheet.scan.dpi === undefined ? '' : `, ${sheet.scan.dpi} dpi`}
              </span>
            </span>
          </Button>
          {canMove && (
            <span
              aria-hidden
              className="sheet-list-grip"
              draggable
              title="Drag this sheet to another place"
              onDragStart={(event) => event.dataTransfer.setData(DRAGGED, sheet.id)}
            >
              ⠿
            </span>
          )}
        </li>
      ))}
    </ul>
  )
}

/** A small picture of a sheet, whether its other pictures are made or not. */
function Thumbnail({ sheet: { id, scan } }: { sheet: Sheet }) {
  const job = useBench((bench) => bench.opened?.id)
  // A locked scan has one once it is open.
  const state = useBench(({ pictures }) => pictures[id]?.progress.state)
  const [failed, setFailed] = useState<string | null>(null)
  if (job === undefined) return null
  const address = frontAddress({ job, sheet: id, version: scanVersion(scan) })
  const attempt = `${address} ${state}`
  return (
    <span className="sheet-list-picture">
      {failed === attempt ? (
        <Icon name="sheet" large />
      ) : (
        <img
          key={attempt}
          src={theHost().pictureUrl(address)}
          alt=""
          draggable={false}
          onError={() => setFailed(attempt)}
        />
      )}
    </span>
  )
}
