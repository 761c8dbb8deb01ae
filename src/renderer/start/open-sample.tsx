import { useState } from 'react'
import { Button } from '../parts/button.tsx'
import { openWith } from './open-with.ts'

/** Opens a copy of the sample job. */
export function OpenSample() {
  const [busy, setBusy] = useState(false)
  return (
    <section className="start-way" aria-label="Look at the sample">
      <h2 className="start-way-title">Look at the sample</h2>
      <p>
        A deck ventilator of 1911: its sheet, its views and their scales, and a table of dimensions, some
        agreed and some disputed. It is a copy to practise on; nothing in it can be spoilt.
      </p>
      <div>
        <Button
          disabled={busy}
          onPress={async () => {
            setBusy(true)
            await openWith('open-sample', {}).finally(() => setBusy(false))
          }}
        >
          Open the sample
        </Button>
      </div>
    </section>
  )
}
