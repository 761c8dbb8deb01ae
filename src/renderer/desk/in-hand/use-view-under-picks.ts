import { useEffect } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { setPicks } from '../../bench/choose.ts'
import { useLastUsed } from './last-used.ts'
import { placesOf } from './places-of.ts'
import { viewsAt } from './views-at.ts'

/** The first pick says in which view is worked, where it lies in one and one only. */
export function useViewUnderPicks(): void {
  const picks = useBench((bench) => bench.picks)
  const job = useBench((bench) => bench.opened?.job)
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    const { tool } = picks
    const [first, ...more] = picks.features
    if ((tool.kind !== 'measure' && tool.kind !== 'reference') || first === undefined || more.length > 0)
      return
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
