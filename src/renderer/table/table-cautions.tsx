import './table-cautions.css'
import { useState } from 'react'
import { STANDING_CAUTIONS, STANDING_REASONS } from '../../core/ledger/table/cautions.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import { plainText } from '../../core/words/plain-text.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose, goTo } from '../bench/choose.ts'
import type { Selection } from '../bench/selection.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Icon } from '../parts/icon.tsx'
import { placeOfCaution } from './caution-place.ts'

const STANDING: ReadonlySet<string> = new Set(STANDING_REASONS.map(({ code }) => code))

function show(place: Selection): void {
  if (place.kind === 'view') goTo('scale')
  choose(place)
}

/** The foot of the table: the first caution of its job in a line, which leads to what it is about, and all to be opened. */
export function TableCautions({ table }: { table: Table | null }) {
  const [open, setOpen] = useState(false)
  const job = useBench((bench) => bench.opened?.job)
  const cautions = (table?.cautions ?? STANDING_CAUTIONS).map((words, i) => {
    const reason = table?.cautionReasons[i]
    const own = reason !== undefined && !STANDING.has(reason.code)
    const place = own && job !== undefined ? placeOfCaution(reason, job) : null
    return { words: plainText(words), own, place }
  })
  const own = cautions.filter((one) => one.own)
  const first = own[0] ?? cautions[0]
  if (first === undefined) return null
  const { words, place } = first
  return (
    <footer className="table-cautions">
      <Icon name="caution" />
      <p className="table-cautions-line" data-own={first.own || undefined} title={words}>
        {words}
      </p>
      {place !== null && (
        <Button kind="quiet" label={`Show what this is about: ${words}`} onPress={() => show(place)}>
          Show
        </Button>
      )}
      <Button kind="quiet" onPress={() => setOpen(true)}>
        {own.length > 1 ? `All cautions, ${own.length} of this job` : 'All cautions'}
      </Button>
      <Dialog title="Cautions" open={open} onClose={() => setOpen(false)} wide>
        <ul className="table-cautions-all">
          {cautions.map((one) => (
            <li key={one.words}>{one.words}</li>
          ))}
        </ul>
      </Dialog>
    </footer>
  )
}
