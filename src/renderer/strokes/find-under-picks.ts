import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'
import { markOnStroke } from '../../core/job/from-picks/mark-on-stroke.ts'
import type { FoundOn } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { useBench } from '../bench/bench-store.ts'
import { setPicks } from '../bench/choose.ts'
import { tellOfPicks } from '../bench/notices.ts'
import { onTheBench } from '../camera/look-at.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import {
  foundMark,
  isOfOnePick,
  type NewFeature,
  type PickedFeature,
  type Picks,
  pickedOn,
  readyForStroke,
  withoutFeature,
  withStroke,
} from '../picking/picks.ts'
import type { StrokeState } from '../picking/stroke-state.ts'
import { isSlot } from '../picking/tool.ts'
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
  const ofEnd = isSlot(tool) ? { as: feature.pixels.length === 1 ? ('end' as const) : ('arc' as const) } : {}
  return wish && { ...wish, ...ofEnd, ...wantedOn(pictures[here.sheet], how) }
}

/** Looks for the stroke under the newest picks, where they are complete and not by hand, and takes it when it comes. */
export async function findUnderPicks(): Promise<void> {
  const { picks, pictures, sheet } = useBench.getState()
  const ready = readyForStroke(picks)
  const shown = sheet === null ? undefined : pictures[sheet]
  if (ready === null || shown === undefined) return
  const wish = wishOf(ready)
  if (wish === null) {
    if (isOfOnePick(picks, ready)) goOnPicking(picks, ready, reason('search.too-far-off'))
    else setPicks(withStroke(picks, ready, { state: 'none', because: reason('search.too-far-off') }).picks)
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
  if (state.state === 'none' && isOfOnePick(later, ready)) {
    goOnPicking(later, looking.now, state.because)
    return
  }
  const again = pickedTwice(found.picks)
  if (again === null) setPicks(found.picks)
  else {
    setPicks(withoutFeature(found.picks, again))
    const round = isSlot(later.tool) ? 'round end' : 'circle'
    tellOfPicks(inWords(reason('picked.same-again', { kind: again.need === 'circle' ? round : 'line' })))
  }
}

/** A round end that one pick does not settle takes two more on its rim. */
function goOnPicking(picks: Picks, end: NewFeature, because: AnyReason): void {
  setPicks(pickedOn(picks, end))
  tellOfPicks(inWords(reason('picked.end-not-seen', { because })))
}

/**
 * The newest mark, where it is of a stroke that was picked with the tool already: nothing lies between the two. Of two that
 * one drag picks it may be the first of them that is found last.
 */
function pickedTwice({ features }: Picks): PickedFeature | null {
  const newest = features.at(-1)
  const mark = newest === undefined ? null : foundMark(newest)
  if (newest === undefined || mark === null) return null
  const marks = useBench.getState().opened?.job.marks ?? []
  const before = features.slice(0, -1).some((feature) => {
    const one = 'mark' in feature ? marks.find(({ id }) => id === feature.mark) : foundMark(feature)
    return one != null && isSameMark(mark, one)
  })
  return before ? newest : null
}
