import './table-cautions.css'
import { useState } from 'react'
import { STANDING_CAUTIONS } from '../../core/ledger/table/cautions.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Icon } from '../parts/icon.tsx'

const STANDING: ReadonlySet<string> = new Set(STANDING_CAUTIONS)

/** The foot of the table: its first caution in a line, and all of them to be opened. */
export function TableCautions({ cautions }: { cautions: readonly string[] }) {
  const [open, setOpen] = useState(false)
  const own = cautions.filter((caution) => !STANDING.has(caution))
  const [first] = STANDING_CAUTIONS
  return (
    <footer className="table-cautions">
      <Icon name="caution" />
      <p className="table-cautions-line">{first}</p>
      {own.length > 0 && (
        <p className="table-cautions-own">
          {own.length === 1 ? 'One more of this job' : `${own.length} more of this job`}
        </p>
      )}
      <Button kind="quiet" onPress={() => setOpen(true)}>
        All cautions
      </Button>
      <Dialog title="Cautions" open={open} onClose={() => setOpen(false)} wide>
        <ul className="table-cautions-all">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Dialog>
    </footer>
  )
}
