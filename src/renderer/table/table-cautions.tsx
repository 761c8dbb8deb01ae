import './table-cautions.css'
import { useState } from 'react'
import { STANDING_CAUTIONS } from '../../core/ledger/table/cautions.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Icon } from '../parts/icon.tsx'

/**
 * The foot of the table: its first caution in a line, and all of them to be opened.
 * @param own how many of them are of this job
 */
export function TableCautions({ cautions, own }: { cautions: readonly string[]; own: number }) {
  const [open, setOpen] = useState(false)
  const [first] = STANDING_CAUTIONS
  return (
    <footer className="table-cautions">
      <Icon name="caution" />
      <p className="table-cautions-line">{first}</p>
      {own > 0 && (
        <p className="table-cautions-own">{own === 1 ? 'One more of this job' : `${own} more of this job`}</p>
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
