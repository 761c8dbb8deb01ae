import type { FoundOn } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { setPicks } from '../bench/choose.ts'
import { onTheBench } from '../camera/look-at.ts'
import type { StrokeState } from '../picking/fitted.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import { type NewFeature, readyForStroke, withStroke } from '../picking/picks.ts'
import { strokeReach } from './reach.ts'
import type { Search, SearchResult } from './search.ts'
import { searchAgain, searchFor } from './search-for.ts'
import { searchScan } from './search-scan.ts'
import { toFitted } from './to-fitted.ts'

export const FAR = 'Too far off to tell which stroke is meant: go closer to find it.'

/** Standard uncertainty of where the hand pointed along the stroke: of the worst of its picks. */
const along = ({ sigmas }: Pick<NewFeature, 'sigmas'>): number => Math.max(...sigmas)

export function stateOf(result: SearchResult, feature: Pick<NewFeature, 'pixels' | 'sigmas'>): StrokeState {
  if (!('reading' in result)) return { state: 'none', because: result.found.because }
  const { found, reading } = result
  return { state: 'found', fitted: toFitted(found, reading, feature.pixels, along(feature)) }
}

function searchOf(feature: NewFeature): Search | null {
  const { picks, pictures, opened } = useBench.getState()
  const here = onTheBench()
  const reach = here === undefined ? null : strokeReach(here.camera.zoom, pictures[here.sheet])
  if (here === undefined || reach === null) return null
  const { tool } = picks
  const before: FoundOn | undefined =
    tool.kind === 'repeat' ? opened?.job.marks.find(({ id }) => id === tool.mark)?.stroke : undefined
  if (before !== undefined) return searchAgain(before, feature.pixels, reach)
  return searchFor(feature.need, feature.pixels, useHowToPick.getState(), here.camera, reach)
}

/** Looks for the stroke under the newest picks, where they are complete and not by hand, and takes it when it comes. */
export async function findUnderPicks(): Promise<void> {
  const { picks, pictures, sheet } = useBench.getState()
  const ready = readyForStroke(picks)
  const shown = sheet === null ? undefined : pictures[sheet]
  if (ready === null || shown === undefined) return
  const search = searchOf(ready)
  if (search === null) {
    setPicks(withStroke(picks, ready, { state: 'none', because: FAR }).picks)
    return
  }
  const looking = withStroke(picks, ready, { state: 'looking' })
  setPicks(looking.picks)
  const state = stateOf(await searchScan(search, shown), ready)
  const later = useBench.getState().picks
  const found = withStroke(later, looking.now, state)
  if (found.picks !== later) setPicks(found.picks)
}
