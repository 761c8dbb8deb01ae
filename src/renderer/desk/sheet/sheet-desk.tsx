import { useBench } from '../../bench/bench-store.ts'
import { bringIn } from '../../bench/bring-in.ts'
import { ScanFiles } from '../../parts/scan-files.tsx'
import { Section } from '../../parts/section.tsx'
import { AidsSection } from './aids-section.tsx'
import { RecordSection } from './record-section.tsx'
import { SheetList } from './sheet-list.tsx'

/** Station 1: bring scans in, say what they are, look at them as they are best seen. */
export function SheetDesk() {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const chosen = useBench((bench) => bench.sheet)
  const sheet = job?.sheets.find(({ id }) => id === chosen)
  if (job === undefined) return null
  return (
    <>
      <Section title="Sheets">
        <SheetList sheets={job.sheets} />
        <ScanFiles
          words="Bring in a scan…"
          kind={job.sheets.length === 0 ? 'main' : 'plain'}
          disabled={!writable}
          onFiles={(files) => void bringIn(files)}
        />
        <p className="desk-soft">
          PNG, JPEG, WebP or TIFF. It is copied into the job as it is, and never altered.
        </p>
      </Section>
      {sheet !== undefined && (
        <>
          <AidsSection />
          <RecordSection sheet={sheet} key={sheet.id} />
        </>
      )}
    </>
  )
}
