import './printed-table.css'
import { useEffect, useState } from 'react'
import { createPortal, flushSync } from 'react-dom'
import { useBench } from '../bench/bench-store.ts'
import { PrintedPage } from './printed-page.tsx'

/** What is printed of the window: the table, whole. It is there only while it is printed. */
export function PrintedTable() {
  const [printing, setPrinting] = useState<Date | null>(null)
  useEffect(() => {
    // The browser takes the page as it is when these have been answered.
    const begin = (): void => flushSync(() => setPrinting(new Date()))
    const end = (): void => setPrinting(null)
    window.addEventListener('beforeprint', begin)
    window.addEventListener('afterprint', end)
    return () => {
      window.removeEventListener('beforeprint', begin)
      window.removeEventListener('afterprint', end)
    }
  }, [])
  const opened = useBench((bench) => bench.opened)
  const table = useBench((bench) => bench.table)
  const tableOf = useBench((bench) => bench.tableOf)
  if (printing === null || opened === null || table === null) return null
  const page = (
    <PrintedPage job={opened.job} table={table} isNewest={tableOf === opened.n} printedAt={printing} />
  )
  return createPortal(<div className="printed-table">{page}</div>, document.body)
}
