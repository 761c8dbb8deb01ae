import { useState } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import type { RecentJob } from '../../contract/bench-state.ts'
import { useBench } from '../bench/bench-store.ts'
import { Button } from '../parts/button.tsx'
import { openWith } from './open-with.ts'

const NONE: readonly RecentJob[] = []

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' })

/** Opens a job that is there already. */
export function OpenJob() {
  const recent = useBench((bench) => bench.host?.recent ?? NONE)
  const chooses = useBench((bench) => bench.host?.choosesFolders === true)
  const [busy, setBusy] = useState(false)
  const once = (open: () => Promise<boolean>) => async () => {
    setBusy(true)
    await open().finally(() => setBusy(false))
  }
  return (
    <section className="start-way" aria-label="Go on with a job">
      <h2 className="start-way-title">Go on with a job</h2>
      {recent.length === 0 ? (
        <p>A job is a folder with its scans and all that is known about them. Recent jobs appear here.</p>
      ) : (
        <ul className="start-recent">
          {recent.map(({ id, title, place, openedAt }) => (
            <li key={id}>
              <AriaButton
                className="start-recent-one"
                isDisabled={busy}
                onPress={once(() => openWith('open-recent', { recent: id }))}
              >
                <span className="start-recent-title">{title}</span>
                <span className="start-recent-place">{place}</span>
                <span className="start-recent-place">Last open {day.format(new Date(openedAt))}</span>
              </AriaButton>
            </li>
          ))}
        </ul>
      )}
      {chooses ? (
        <div>
          <Button icon="folder" disabled={busy} onPress={once(() => openWith('choose-job', {}))}>
            Open a job folder…
          </Button>
        </div>
      ) : (
        <p className="start-soft">
          To open another job folder, run <code>scantling open FOLDER</code>.
        </p>
      )}
    </section>
  )
}
