import { useBench } from '../../bench/bench-store.ts'
import { bringIn } from '../../intake/bring-in.ts'
import { LimitsButton } from '../../intake/limits-dialog.tsx'
import { ScanFiles } from '../../parts/scan-files.tsx'
import { Section } from '../../parts/section.tsx'
import { AidsSection } from './aids-section.tsx'
import { ConventionsSection } from './conventions-section.tsx'
import { LockedSection } from './locked-section.tsx'
import { RecordSection } from './record-section.tsx'
import { ReplaceSection } from './replace-section.tsx'
import { useReplacing } from './replacing.ts'
import { SheetList } from './sheet-list.tsx'
import { SheetTools } from './sheet-tools.tsx'
import { StraightenSection } from './straighten-section.tsx'
import { TitleBlockSection } from './title-block-section.tsx'

/** Station 1: bring scans in, say what they are, look at them as they are best seen. */
export function SheetDesk() {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const chosen = useBench((bench) => bench.sheet)
  const sheet = job?.sheets.find(({ id }) => id === chosen)
  const open = useBench((bench) => bench.opened?.id)
  const replacing = useReplacing(({ now }) => now)
  if (job === undefined) return null
  return (
    <>
      {replacing !== null && replacing.job === open && <ReplaceSection job={job} replacing={replacing} />}
      <Section title="Sheets">
        <SheetList sheets={job.sheets} writable={writable} />
        {sheet !== undefined && <SheetTools job={job} sheet={sheet} writable={writable} />}
        <div className="block-row">
          <ScanFiles
            words="Bring in a scan…"
            kind={job.sheets.length === 0 ? 'main' : 'plain'}
            disabled={!writable}
            onFiles={(files) => void bringIn(files)}
          />
          <LimitsButton />
        </div>
        <p className="block-soft">
          PNG, JPEG, WebP, TIFF or PDF. It is copied into the job as it is, and never altered.
        </p>
      </Section>
      <ConventionsSection job={job} />
      {sheet !== undefined && (
        <>
          <LockedSection sheet={sheet.id} key={`locked ${sheet.id}`} />
          <AidsSection />
          <StraightenSection sheet={sheet} key={`straighten ${sheet.id}`} />
          <TitleBlockSection sheet={sheet} key={`title block ${sheet.id}`} />
          <RecordSection sheet={sheet} key={sheet.id} />
        </>
      )}
    </>
  )
}
