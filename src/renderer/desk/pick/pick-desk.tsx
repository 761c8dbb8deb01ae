import { useEffect } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { setPicks } from '../../bench/choose.ts'
import { isMeasure } from '../../picking/picked-marks.ts'
import { isComplete } from '../../picking/picks.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { placesOf } from '../in-hand/places-of.ts'
import { viewAtWork } from '../in-hand/view-at-work.ts'
import { viewsAt } from '../in-hand/views-at.ts'
import { MeasureChoice } from './measure-choice.tsx'
import { MeasureForm } from './measure-form.tsx'

/** Station 3: what is measured, and what it comes to. */
export function PickDesk() {
  const last = useLastUsed(({ view }) => view)
  const view = useBench((bench) => viewAtWork(bench, last))
  const picks = useBench((bench) => bench.picks)
  useViewUnderPicks()
  if (isMeasure(picks) && isComplete(picks) && view !== undefined) {
    return <MeasureForm picks={picks} view={view} />
  }
  return <MeasureChoice view={view} />
}

/** The first pick says which view is measured in, where it lies in one and one only. */
function useViewUnderPicks(): void {
  const picks = useBench((bench) => bench.picks)
  const job = useBench((bench) => bench.opened?.job)
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    const { tool } = picks
    const [first, ...more] = picks.features
    if (tool.kind !== 'measure' || first === undefined || more.length > 0) return
    if (job === undefined || sheet === null) return
    const pixel = placesOf(first, job.marks).at(-1)
    if (pixel === undefined) return
    const under = viewsAt(job.views, sheet, pixel)
    const [one] = under
    if (one === undefined || under.length > 1 || one.id === tool.view) return
    useLastUsed.setState({ view: one.id })
    setPicks({ ...picks, tool: { ...tool, view: one.id } })
  }, [picks, job, sheet])
}
