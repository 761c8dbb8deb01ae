import './next-rows.css'
import { useEffect } from 'react'
import { Button, Tooltip, TooltipTrigger } from 'react-aria-components'
import type { Status } from '../../core/ledger/table/table.ts'
import { statusWord } from '../../core/words/status-word.ts'
import { useBench } from '../bench/bench-store.ts'
import { goToNext, NEXT_KEYS, setRowsInOrder } from './rows-in-order.ts'
import { StatusSign } from './status-mark.tsx'
import type { DimensionRows } from './use-dimension-rows.ts'

/** Goes from one row that wants something to the next: what is disputed, what has no value, what nothing checks. */
export function NextRows({ rows }: { rows: DimensionRows['rows'] }) {
  useEffect(() => setRowsInOrder(rows.map(({ original }) => original)), [rows])
  return (
    <div className="next-rows">
      {NEXT_KEYS.map(({ status, key }) => (
        <NextRow
          key={status}
          status={status}
          shortcut={key}
          count={rows.filter(({ original }) => original.status === status).length}
        />
      ))}
    </div>
  )
}

function NextRow({ status, shortcut, count }: { status: Status; shortcut: string; count: number }) {
  // A row that was only chosen elsewhere is where the next one is looked for from.
  const opened = useBench((bench) => bench.opened !== null)
  const words = status === 'open' ? 'with no value' : statusWord(status)
  const label = `Next ${words}, ${count} shown`
  return (
    <TooltipTrigger delay={500}>
      <Button
        className="next-rows-one"
        aria-label={label}
        aria-keyshortcuts={shortcut}
        isDisabled={!opened || count === 0}
        onPress={() => goToNext(status, 1)}
      >
        <StatusSign status={status} />
        <span className="next-rows-count">{count}</span>
      </Button>
      <Tooltip className="button-hint" offset={6}>
        {`${label}: key ${shortcut}, back with Shift`}
      </Tooltip>
    </TooltipTrigger>
  )
}
