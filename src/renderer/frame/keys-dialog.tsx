import './keys-dialog.css'
import { Dialog } from '../parts/dialog.tsx'
import { KEYS } from './keys.ts'

/** The sheet of keys. */
export function KeysDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Keys" open={open} onClose={onClose} wide>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what is longer than the window is scrolled with the keyboard */}
      <section className="keys-dialog" aria-label="All keys" tabIndex={0}>
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
      </section>
    </Dialog>
  )
}
