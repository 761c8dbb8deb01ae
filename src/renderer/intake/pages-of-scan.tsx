import './pages-of-scan.css'
import { useState } from 'react'
import type { Refused } from '../../contract/reply.ts'
import type { ScanLook } from '../../contract/scan-look.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { reason, sentenceOf } from '../words/window-words.ts'
import { type TakePages, usePagesAsked } from './choose-pages.ts'
import { DrawnAt } from './drawn-at.tsx'
import { LockedScan } from './locked-scan.tsx'
import { PageGrid } from './page-grid.tsx'
import { PageTools } from './page-tools.tsx'
import { drawnAtDpi, leftOutInWords, usableDpi } from './page-words.ts'
import { pagesWanted } from './pages-wanted.ts'
import { ScanDpi } from './scan-dpi.tsx'
import { useLimits } from './use-limits.ts'
import { useMorePages } from './use-more-pages.ts'

interface PagesOfScanProps {
  look: ScanLook
  take: TakePages
  done: (taken: boolean) => void
}

/** Asks which pages of a scan are wanted, while there is one to ask about. */
export function PagesDialog() {
  const asked = usePagesAsked((state) => state.asked)
  return asked === null ? null : <PagesOfScan {...asked} key={asked.look.upload} />
}

/** The pages of a scan to choose from, at which resolution; or the field for its password, while it is locked. */
function PagesOfScan({ look: begun, take, done }: PagesOfScanProps) {
  const [look, setLook] = useState(begun)
  const [password, setPassword] = useState<string>()
  const leave = () => done(false)
  if (look.locked) {
    return (
      <Dialog title="This scan is locked" open firm onClose={leave}>
        <LockedScan
          look={look}
          onLeave={leave}
          onOpened={(opened, by) => {
            setPassword(by)
            setLook(opened)
          }}
        />
      </Dialog>
    )
  }
  return <PagesToChoose look={look} password={password} take={take} done={done} />
}

const noSheet = (look: ScanLook, page: number): boolean =>
  look.leftOut?.includes(page) === true ||
  look.looked.some((one) => one.page === page && one.fault !== undefined)

const allOf = (look: ScanLook): number[] =>
  Array.from({ length: look.pages }, (_, k) => k + 1).filter((page) => !noSheet(look, page))

function PagesToChoose(props: PagesOfScanProps & { password: string | undefined }) {
  const { password, take, done } = props
  const { look, loading, loadMore } = useMorePages(props.look, password)
  const limits = useLimits()
  const [chosen, setChosen] = useState<ReadonlySet<number>>(
    () => new Set(look.pages === 1 ? allOf(look) : []),
  )
  const [dpi, setDpi] = useState('')
  const [drawnAt, setDrawnAt] = useState(
    () => look.looked.find(({ drawnAt }) => drawnAt !== undefined)?.drawnAt ?? 400,
  )
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<Refused | null>(null)
  const drawn = look.looked.filter(({ made, fault }) => made === 'drawn' && fault === undefined)
  const scanned = look.looked.some(({ made, fault }) => made === 'scanned' && fault === undefined)
  const drawnChosen = drawn.filter(({ page }) => chosen.has(page))
  const comesTo = drawnAtDpi(drawnChosen.length > 0 ? drawnChosen : drawn, drawnAt, limits?.pixels ?? null)
  const dpiProblem = usableDpi(dpi) === null ? reason('written.no-dpi', { example: 300 }) : null
  const problem = dpiProblem !== null || (drawnChosen.length > 0 && comesTo.problem !== null)
  const bringIn = async () => {
    setBusy(true)
    setRefused(null)
    const pages = pagesWanted(chosen, look.looked, { drawnAt, dpi: usableDpi(dpi) ?? undefined })
    const why = await take({ pages, ...(password === undefined ? {} : { password }) })
    setBusy(false)
    if (why === null) done(true)
    else setRefused(why)
  }
  return (
    <Dialog
      title={`Pages of ${look.name}`}
      open
      wide
      firm
      onClose={() => done(false)}
      actions={
        <>
          <Button onPress={() => done(false)}>Cancel</Button>
          <Button kind="main" disabled={busy || problem || chosen.size === 0} onPress={() => void bringIn()}>
            Bring in
          </Button>
        </>
      }
    >
      <p>Each page that is chosen becomes a sheet. The file is kept whole, as it is.</p>
      {look.leftOut !== undefined && <p className="block-soft">{leftOutInWords(look.leftOut)}</p>}
      {look.pages > 1 && (
        <PageTools
          pages={look.pages}
          chosen={chosen}
          all={allOf(look)}
          onChoose={(pages) => setChosen(new Set(pages))}
        />
      )}
      <PageGrid
        look={look}
        chosen={chosen}
        onChoose={setChosen}
        loading={loading}
        onMore={loadMore}
        leaving={busy}
      />
      <div className="pages-settings">
        {scanned && (
          <ScanDpi looked={look.looked} value={dpi} onChange={setDpi} error={sentenceOf(dpiProblem)} />
        )}
        {drawn.length > 0 && <DrawnAt value={drawnAt} onChange={setDrawnAt} {...comesTo} />}
      </div>
      <p className="pages-refused" role="alert">
        {busy ? 'Bringing in…' : refused?.sentence}
      </p>
    </Dialog>
  )
}
