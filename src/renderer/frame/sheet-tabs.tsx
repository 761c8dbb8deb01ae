import './sheet-tabs.css'
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { showSheet } from '../bench/choose.ts'

/** Which sheet is on the bench; where there are several, each to be chosen. */
export function SheetTabs() {
  const sheets = useBench((bench) => bench.opened?.job.sheets)
  const sheet = useBench((bench) => bench.sheet)
  if (sheets === undefined || sheets.length < 2) {
    const title = sheets?.[0]?.title ?? ''
    return (
      <p className="sheet-head-title" title={title}>
        {title}
      </p>
    )
  }
  return (
    <ToggleButtonGroup
      className="sheet-tabs"
      aria-label="Sheet on the bench"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={sheet === null ? [] : [sheet]}
      onSelectionChange={([key]) => {
        if (key !== undefined) void showSheet(String(key))
      }}
    >
      {sheets.map(({ id, title }, k) => (
        <ToggleButton key={id} id={id} className="sheet-tabs-one">
          {k + 1} {title}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  )
}
