import { useBench } from '../../bench/bench-store.ts'
import { isComplete } from '../../picking/picks.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { useViewUnderPicks } from '../in-hand/use-view-under-picks.ts'
import { viewAtWork } from '../in-hand/view-at-work.ts'
import { OutlineForm } from './outline-form.tsx'
import { ReferenceForm } from './reference-form.tsx'
import { ViewForm } from './view-form.tsx'
import { ViewList } from './view-list.tsx'
import { ViewSections } from './view-sections.tsx'

/** Station 2: views, and the sizes known in them. */
export function ScaleDesk() {
  const last = useLastUsed(({ view }) => view)
  const view = useBench((bench) => viewAtWork(bench, last))
  const picks = useBench((bench) => bench.picks)
  const sheet = useBench((bench) => bench.sheet)
  useViewUnderPicks()
  const complete = isComplete(picks)
  if (sheet === null) return null
  if (complete && picks.tool.kind === 'outline') {
    return picks.tool.view !== undefined && view !== undefined ? (
      <OutlineForm view={view} />
    ) : (
      <ViewForm sheet={sheet} />
    )
  }
  return (
    <>
      {complete && picks.tool.kind === 'reference' && view !== undefined && <ReferenceForm view={view} />}
      <ViewList sheet={sheet} atWork={view?.id ?? null} />
      {view !== undefined && <ViewSections view={view} key={view.id} />}
    </>
  )
}
