import { pixel } from '../../../core/geometry/frames.ts'
import { isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import './view-list.css'
import { Button as AriaButton } from 'react-aria-components'
import type { View } from '../../../core/job/model/types.ts'
import type { Table } from '../../../core/ledger/table/table.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, putDown, setPicks, takeUp } from '../../bench/choose.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { noPicks, withPick } from '../../picking/picks.ts'
import { OUTLINE_KEY } from '../in-hand/tool-keys.ts'

/** The views of a sheet, and two ways to name another. */
export function ViewList({ sheet, atWork }: { sheet: string; atWork: string | null }) {
  const job = useBench((bench) => bench.opened?.job)
  const table = useBench((bench) => bench.table)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const outlining = useBench(({ picks: { tool } }) => tool.kind === 'outline' && tool.view === undefined)
  const page = job?.sheets.find(({ id }) => id === sheet)?.scan
  if (job === undefined || page === undefined) return null
  const views = job.views.filter((view) => view.sheet === sheet)
  const wholeSheet = () => {
    const corner = withPick(noPicks({ kind: 'outline' }), pixel(0, 0))
    setPicks(withPick(corner, pixel(page.width, page.height)))
  }
  return (
    <Section title="Views on this sheet">
      {views.length === 0 ? (
        <p>
          A view is a part of the sheet that is drawn to one scale: an elevation, a plan, a detail. Each gets
          its scale from sizes that are printed in it.
        </p>
      ) : (
        <ul className="view-list">
          {views.map((view) => (
            <li key={view.id}>
              <AriaButton
                className="block-one-of view-list-one"
                aria-current={view.id === atWork || undefined}
                onPress={() => {
                  putDown()
                  choose({ kind: 'view', id: view.id })
                }}
              >
                <span>{view.name}</span>
                <span className="block-soft view-list-state">{stateOf(view, table)}</span>
              </AriaButton>
            </li>
          ))}
        </ul>
      )}
      <div className="block-row">
        {outlining ? (
          <Button onPress={putDown}>Cancel</Button>
        ) : (
          <Button
            icon="outline"
            kind={views.length === 0 ? 'main' : 'plain'}
            shortcut={OUTLINE_KEY}
            disabled={!writable}
            onPress={() => {
              takeUp({ kind: 'outline' })
              toTheSheet()
            }}
          >
            Name a view
          </Button>
        )}
        <Button kind="quiet" disabled={!writable} onPress={wholeSheet}>
          The whole sheet is one view
        </Button>
      </div>
    </Section>
  )
}

function stateOf(view: View, table: Table | null): string {
  const row = table?.views.find(({ id }) => id === view.id)
  const sizes = view.references.length
  const known = sizes === 0 ? 'no figured size' : sizes === 1 ? 'one figured size' : `${sizes} figured sizes`
  if (row === undefined || !isCalibrated(row)) return `No scale yet, ${known}`
  const doubted = row.references.filter(({ suspect }) => suspect).length
  return `Has its scale, ${known}${doubted === 0 ? '' : `, ${doubted} to look at`}`
}
