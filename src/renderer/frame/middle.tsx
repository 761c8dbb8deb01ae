import './middle.css'
import { type CSSProperties, useState } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { SheetView } from '../sheet/sheet-view.tsx'
import { DimensionTable } from '../table/dimension-table.tsx'
import { Divider } from './divider.tsx'
import { SheetHead } from './sheet-head.tsx'

const LEAST = 15
const MOST = 75

/** The sheet over the table. */
export function Middle() {
  const [share, setShare] = useRemembered('scantling.table-share', 44, LEAST, MOST)
  const sheet = useBench((bench) => bench.sheet)
  const pictures = useBench((bench) => bench.pictures[bench.sheet ?? '']?.progress.state ?? 'asked for')
  return (
    <div className="middle" style={{ '--table-share': `${share}%` } as CSSProperties}>
      <SheetHead />
      <div className="middle-sheet" data-region="sheet" data-pictures={pictures}>
        {sheet === null ? <NoSheet /> : <SheetView />}
      </div>
      <Divider share={share} least={LEAST} most={MOST} onMove={setShare} />
      <div className="middle-table" id="the-table" data-region="table">
        <DimensionTable />
      </div>
    </div>
  )
}

function NoSheet() {
  return (
    <div className="middle-empty">
      <p className="middle-empty-title">No sheet on the bench</p>
      <p>Bring in a scan of a drawing at station 1, or drop one anywhere on this window.</p>
    </div>
  )
}

/** A number between `least` and `most` that is remembered on this machine. */
function useRemembered(key: string, first: number, least: number, most: number) {
  const held = (value: number): number => Math.min(most, Math.max(least, value))
  const [value, setValue] = useState(() => {
    const kept = Number(localStorage.getItem(key) ?? first)
    return held(Number.isFinite(kept) ? kept : first)
  })
  const set = (next: number): void => {
    setValue(held(next))
    localStorage.setItem(key, String(held(next)))
  }
  return [value, set] as const
}
