import './limits-dialog.css'
import { useState } from 'react'
import { LIMITS, type Limits } from '../../contract/limits.ts'
import { ask } from '../bench/the-host.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { NumberField } from '../parts/number-field.tsx'
import { LIMIT_WORDS, shownLimit, withLimit } from './limit-words.ts'

/** A button that shows how much is taken in, and lets a person set it otherwise. */
export function LimitsButton() {
  const [limits, setLimits] = useState<Limits | null>(null)
  const show = async () => {
    const now = await ask('limits', {})
    if (now !== undefined) setLimits(now)
  }
  return (
    <>
      <Button kind="quiet" onPress={() => void show()}>
        Size limits…
      </Button>
      {limits !== null && <LimitsDialog begun={limits} onClose={() => setLimits(null)} />}
    </>
  )
}

function LimitsDialog({ begun, onClose }: { begun: Limits; onClose: () => void }) {
  const [limits, setLimits] = useState(begun)
  const set = async () => {
    if ((await ask('set-limits', { limits })) !== undefined) onClose()
  }
  return (
    <Dialog
      title="Size limits"
      open
      onClose={onClose}
      actions={
        <>
          <Button kind="quiet" onPress={() => setLimits(LIMITS)}>
            Defaults
          </Button>
          <Button onPress={onClose}>Cancel</Button>
          <Button kind="main" onPress={() => void set()}>
            Set them
          </Button>
        </>
      }
    >
      <p>
        A scan that goes beyond one of these is not brought in, and nothing is changed. They hold for every
        job on this machine.
      </p>
      <div className="limits-fields">
        {LIMIT_WORDS.map((words) => (
          <NumberField
            key={words.key}
            label={words.label}
            suffix={words.unit}
            value={shownLimit(limits, words)}
            least={words.least}
            most={words.most}
            places={1}
            note={words.note}
            onChange={(shown) => setLimits((now) => withLimit(now, words, shown))}
          />
        ))}
      </div>
    </Dialog>
  )
}
