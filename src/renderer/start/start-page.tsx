import './start-page.css'
import { useCallback, useState } from 'react'
import { STANDING_CAUTIONS } from '../../core/ledger/table/cautions.ts'
import { useBench } from '../bench/bench-store.ts'
import { DropHint } from '../frame/drop-hint.tsx'
import { ThemeMenu } from '../frame/theme-menu.tsx'
import { useDroppedScans } from '../frame/use-dropped-scans.ts'
import { WhoDialog } from '../frame/who-dialog.tsx'
import { fileIdentity } from '../intake/bring-in.ts'
import { Banners } from '../told/banners.tsx'
import { LongWork } from '../told/long-work.tsx'
import { Notices } from '../told/notices.tsx'
import { HowItGoes } from './how-it-goes.tsx'
import { NewJob } from './new-job.tsx'
import { OpenJob } from './open-job.tsx'
import { OpenSample } from './open-sample.tsx'

const withoutDoubles = (files: File[]): File[] => [
  ...new Map(files.map((file) => [fileIdentity(file), file])).values(),
]

/** What is seen while no job is open: what this is for, and three ways to begin. */
export function StartPage() {
  const version = useBench((bench) => bench.host?.version ?? '')
  const [files, setFiles] = useState<File[]>([])
  const add = useCallback((more: File[]) => setFiles((before) => withoutDoubles([...before, ...more])), [])
  const over = useDroppedScans(add)
  return (
    <div className="start">
      <Banners />
      <main className="start-sheet">
        <header className="start-head">
          <h1 className="start-title">Scantling</h1>
          <p className="start-purpose">
            A workbench for old engineering drawings: it turns a scan into a table of named dimensions. Every
            value has its uncertainty beside it and the evidence behind it, so that a shop can work from it.
          </p>
          <div className="start-theme">
            <ThemeMenu />
          </div>
        </header>
        <div className="start-ways">
          <NewJob files={files} onAdd={add} onFiles={setFiles} />
          <OpenSample />
          <OpenJob />
        </div>
        <HowItGoes />
        <footer className="start-block">
          <ul className="start-cautions" aria-label="Cautions">
            {STANDING_CAUTIONS.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
          <div className="start-facts">
            <span>Scantling {version}</span>
            <span>Nothing leaves this machine.</span>
          </div>
        </footer>
        <LongWork />
      </main>
      <Notices />
      <WhoDialog />
      {over && <DropHint words="Let go to begin a job with this scan" />}
    </div>
  )
}
