import './strip.css'
import type { OpenedJob } from '../../contract/bench-state.ts'
import { useBench } from '../bench/bench-store.ts'
import { Button } from '../parts/button.tsx'
import { History } from './history.tsx'
import { PersonMenu } from './person-menu.tsx'
import { ThemeMenu } from './theme-menu.tsx'
import { closeJob } from './use-commands.ts'

/** The strip along the top: what is open, what can be taken back, what is on disk, who is at work. */
export function Strip({ showKeys }: { showKeys: () => void }) {
  const title = useBench((bench) => bench.opened?.job.title ?? '')
  const place = useBench((bench) => bench.opened?.place ?? '')
  const saved = useBench(({ opened, keeping, connected }) => savedInWords(opened, keeping, connected))
  return (
    <header className="frame-strip strip">
      <div className="strip-job">
        <h1 className="strip-title" title={title}>
          {title}
        </h1>
        <p className="strip-place" title={place}>
          {place}
        </p>
      </div>
      <div className="strip-cell">
        <History which="undo" />
        <History which="redo" />
      </div>
      <p className="strip-cell strip-saved" data-saved>
        {saved}
      </p>
      <div className="strip-cell">
        <PersonMenu />
      </div>
      <div className="strip-cell">
        <ThemeMenu />
        <Button kind="quiet" icon="keys" label="Keys" onPress={showKeys} />
        <Button
          kind="quiet"
          icon="close"
          label="Close this job"
          hint="Close this job. Everything in it is on disk."
          onPress={() => void closeJob()}
        />
      </div>
    </header>
  )
}

const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/** What of the job is on disk, as a fact; what is still on its way is not. */
function savedInWords(opened: OpenedJob | null, keeping: number, connected: boolean): string {
  if (opened === null) return ''
  if (!connected) return 'Nothing is saved now'
  if (keeping > 0) return 'Saving…'
  if (!opened.writable) return 'Read-only'
  if (opened.savedAt === null) return 'Nothing changed yet'
  return `Saved ${clock.format(new Date(opened.savedAt))}`
}
