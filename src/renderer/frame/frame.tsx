import './frame.css'
import { useCallback } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { tell } from '../bench/notices.ts'
import { Desk } from '../desk/desk.tsx'
import { bringIn } from '../intake/bring-in.ts'
import { Banners } from '../told/banners.tsx'
import { Notices } from '../told/notices.tsx'
import { DropHint } from './drop-hint.tsx'
import { Middle } from './middle.tsx'
import { Rail } from './rail.tsx'
import { Strip } from './strip.tsx'
import { TheirStepDialog } from './their-step-dialog.tsx'
import { useDroppedScans } from './use-dropped-scans.ts'
import { WhoDialog } from './who-dialog.tsx'

/** The window while a job is open. */
export function Frame({ showKeys }: { showKeys: () => void }) {
  const over = useDroppedScans(
    useCallback((files: File[]) => {
      if (useBench.getState().opened?.writable === true) void bringIn(files)
      else tell('told', 'Nothing was brought in: this job is open read-only.')
    }, []),
  )
  return (
    <div className="frame">
      <Strip showKeys={showKeys} />
      <Banners />
      <Rail />
      <main className="frame-middle">
        <Middle />
        <Notices />
      </main>
      <Desk />
      <TheirStepDialog />
      <WhoDialog />
      {over && <DropHint words="Let go to bring the scan in as a sheet" />}
    </div>
  )
}
