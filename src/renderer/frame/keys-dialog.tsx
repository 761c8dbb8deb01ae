import './keys-dialog.css'
import { Dialog } from '../parts/dialog.tsx'
import { KEYS } from './keys.ts'

/** The sheet of keys. */
export function KeysDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Keys" open={open} onClose={onClose} wide>
      <div className="keys-dialog">
        {KEYS.map(({ where, keys }) => (
          <section key={where}>
            <h3>{where}</h3>
            <dl>
              {keys.map(([key, does]) => (
                <div key={key} className="keys-dialog-pair">
                  <dt>{key}</dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
    </Dialog>
  )
}
