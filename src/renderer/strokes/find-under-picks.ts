import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'
import { markOnStroke } from '../../core/job/from-picks/mark-on-stroke.ts'
import type { FoundOn } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { setPicks } from '../bench/choose.ts'
import { tell } from '../bench/notices.ts'
import { onTheBench } from '../camera/look-at.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import {
  foundMark,
  type NewFeature,
  type Picks,
  readyForStroke,
  withoutFeature,
  withStroke,
} from '../picking/picks.ts'
import type { StrokeState } from '../picking/stroke-state.ts'
import { inWords, reason } from '../words/window-words.ts'
import { wantedOn } from './ink-of-sheet.ts'
import type { NotFound } from './messages.ts'
import { strokeReach } from './reach.ts'
import { isSameMark } from './same-mark.ts'
import { searchScan } from './search-scan.ts'
import { type SearchWish, wishAgain, wishFor } from './search-wish.ts'

/**
 * What a search has come to.
 * @param rough where it was looked for
 * @param sigmas how surely the hand pointed there, pixels: the worst of them is that along the stroke
 */
export function stateOf(
  found: FoundStroke | NotFound,
  rough: readonly Pixel[],
  sigmas: readonly number[],
): StrokeState {
  if (found.kind === 'none') return { state: 'none', because: found.because }
  return { state: 'found', mark: markOnStroke(found, rough, Math.max(...sigmas)) }
}

function wishOf(feature: NewFeature): SearchWish | null {
  const { picks, pictures, opened } = useBench.getState()
  const here = onTheBench()
  const reach = here === undefined ? null : strokeReach(here.camera.zoom, pictures[here.sheet])
  if (here === undefined || reach === null) return null
  const { tool } = picks
  const before: FoundOn | undefined =
    tool.kind === 'repeat' ? opened?.job.marks.find(({ id }) => id === tool.mark)?.stroke : undefined
  const how = useHowToPick.getState()
  const wish =
    before === undefined ? wishFor(feature.need, how, here.camera, reach) : wishAgain(before, reach)
  return wish && { ...wish, ...wantedOn(pictures[here.sheet], how) }
}

/** Looks for the stroke under the newest picks, where they are complete and not by hand, and takes it when it comes. */
export async function findUnderPicks(): Promise<void> {
  const { picks, pictures, sheet } = useBench.getState()
  const ready = readyForStroke(picks)
  const shown = sheet === null ? undefined : pictures[sheet]
  if (ready === null || shown === undefined) return
  const wish = wishOf(ready)
  if (wish === null) {
    setPicks(withStroke(picks, ready, { state: 'none', because: reason('search.too-far-off') }).picks)
    return
  }
  const looking = withStroke(picks, ready, { state: 'looking' })
  setPicks(looking.picks)
  const { pixels, sigmas } = ready
  const { found: stroke, rough } = await searchScan(pixels, wish, shown)
  const state = stateOf(stroke, rough, sigmas)
  const later = useBench.getState().picks
  const found = withStroke(later, looking.now, state)
  if (found.picks === later) return
  if (!isPickedBefore(found.picks, found.now)) setPicks(found.picks)
  else {
    setPicks(withoutFeature(found.picks, found.now))
    tell(
      'told',
      inWords(reason('picked.same-again', { kind: found.now.need === 'circle' ? 'circle' : 'line' })),
    )
  }
}

/** Whether the newest mark is of a stroke that was picked with the tool already: nothing lies between the two. */
function isPickedBefore({ features }: Picks, newest: NewFeature): boolean {
  const mark = foundMark(newest)
  if (mark === null || features.at(-1) !== newest) return false
  const marks = useBench.getState().opened?.job.marks ?? []
  return features.slice(0, -1).some((feature) => {
    const before = 'mark' in feature ? marks.find(({ id }) => id === feature.mark) : foundMark(feature)
    return before != null && isSameMark(mark, before)
  })
}
