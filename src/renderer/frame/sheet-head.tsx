import './sheet-head.css'
import { useBench } from '../bench/bench-store.ts'
import { ZoomButtons } from '../sheet/zoom-buttons.tsx'
import { SheetTabs } from './sheet-tabs.tsx'
import { ShowMenu } from './show-menu.tsx'

/** The head of the sheet: which sheet it is, what is drawn over it, and how near it is looked at. Nothing lies on the sheet. */
export function SheetHead() {
  const none = useBench((bench) => bench.sheet === null)
  if (none) return <div />
  return (
    <div className="sheet-head">
      <SheetTabs />
      <ShowMenu />
      <ZoomButtons />
    </div>
  )
}
