import type { Pixel, Screen } from '../../core/geometry/frames.ts'
import type { Mark } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { putDown, setPicks } from '../bench/choose.ts'
import { tellOfPicks } from '../bench/notices.ts'
import { toScreen } from '../camera/camera.ts'
import { cameras } from '../camera/camera-store.ts'
import { onTheBench } from '../camera/look-at.ts'
import { farFrom } from '../overlay/geometry-on-screen.ts'
import { shapeOf } from '../overlay/shape.ts'
import { markCalled } from '../picking/pick-names.ts'
import { pickQuality } from '../picking/pick-quality.ts'
import {
  canEnd,
  ended,
  isOpen,
  type Picks,
  takes,
  wanted,
  withMark,
  withoutLast,
  withPick,
} from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { isByHand } from '../strokes/by-hand.ts'
import { findUnderPicks } from '../strokes/find-under-picks.ts'
import { inWords, reason } from '../words/window-words.ts'

/** An old mark that lies so near to a place lies there, CSS pixels. */
const NEAR = 8

/** Whether anything may be picked: the job can be written to, and the scan is the one that was picked on before. */
export function mayPick(): boolean {
  const { opened, sheet, picks } = useBench.getState()
  const scan = opened?.scans.find((state) => state.sheet === sheet)
  return (
    picks.tool.kind !== 'look' && opened?.writable === true && (scan === undefined || scan.state === 'ok')
  )
}

type Here = NonNullable<ReturnType<typeof onTheBench>>

/** How far a place of the scan lies from a mark as it is drawn, CSS pixels. */
function farFromMark(mark: Mark, pixel: Pixel, here: Here): number {
  const at = (p: Pixel): Screen => toScreen(here.camera, here.box, p)
  const place = at(pixel)
  const shape = shapeOf(mark)
  switch (shape?.kind) {
    case undefined:
      return Number.POSITIVE_INFINITY
    case 'point':
      return farFrom(place, [at(shape.at)])
    case 'segment':
      return farFrom(place, shape.ends.map(at))
    case 'circle':
      return Math.abs(farFrom(place, [at(shape.centre)]) - shape.radius * here.camera.zoom)
    case 'path':
      return farFrom(place, shape.pixels.map(at))
  }
}

/** The old mark that lies at a place of the scan and could stand for what is wanted; null where none does. */
function markNear(pixel: Pixel): string | null {
  const here = onTheBench()
  const { opened, picks } = useBench.getState()
  if (here === undefined || opened === null || !mayPick()) return null
  let best: { id: string; far: number } | null = null
  for (const mark of opened.job.marks) {
    if (mark.sheet !== here.sheet || !takes(picks, mark)) continue
    const far = farFromMark(mark, pixel, here)
    if (far <= NEAR && (best === null || far < best.far)) best = { id: mark.id, far }
  }
  return best?.id ?? null
}

/** What a key that is held makes of a pick. */
export interface Manner {
  /** The old mark that lies there, in place of a new one. */
  takesOld: boolean
  /** Exactly there, and not on the stroke. */
  byHand: boolean
}

const PLAINLY: Manner = { takesOld: false, byHand: false }

/** With Shift the old mark that lies there, with Alt a new one by hand. */
export const mannerOf = ({ altKey, shiftKey }: { altKey: boolean; shiftKey: boolean }): Manner => ({
  takesOld: shiftKey && !altKey,
  byHand: altKey,
})

/**
 * Picks at a place of the scan: a new mark, on the stroke that is found there unless it is by hand; or the old mark that
 * lies there, where that is asked for, and nothing where none does.
 */
export function pickAt(pixel: Pixel, { takesOld, byHand }: Manner): void {
  if (!mayPick()) return
  const { picks, opened, pictures } = useBench.getState()
  const here = onTheBench()
  if (here === undefined || wanted(picks) === null) return
  pointer.setState({ arrows: 'pick' })
  if (takesOld && !isOpen(picks)) {
    const near = markNear(pixel)
    const mark = opened?.job.marks.find(({ id }) => id === near)
    if (mark === undefined) tellOfPicks(inWords(reason('picked.no-old-mark')))
    else setPicks(withMark(picks, mark))
    return
  }
  const taken = takenJustThere(picks, pixel)
  if (taken !== null) {
    tellOfPicks(
      inWords(reason('picked.taken-already', { what: markCalled(taken.id, opened?.job.marks ?? []) })),
    )
    return
  }
  const { sigma } = pickQuality(pointer.getState().by, here.camera.zoom, pictures[here.sheet])
  setPicks(withPick(picks, pixel, sigma, isByHand(picks, byHand)))
  void findUnderPicks()
}

/**
 * The old mark that was taken last, where the first pick of the next falls on it: whoever goes on picking along a rim
 * or a line that was taken whole has not begun the next one.
 */
function takenJustThere(picks: Picks, pixel: Pixel): Mark | null {
  const here = onTheBench()
  const taken = picks.features.at(-1)
  if (here === undefined || taken === undefined || !('mark' in taken) || taken.need === 'point') return null
  const mark = useBench.getState().opened?.job.marks.find(({ id }) => id === taken.mark)
  return mark !== undefined && farFromMark(mark, pixel, here) <= NEAR ? mark : null
}

/** Ends the path that is being picked; false when there is none that could be ended. */
export function endPath(): boolean {
  const { picks } = useBench.getState()
  if (!canEnd(picks)) return false
  setPicks(ended(picks))
  return true
}

/** Gives up the newest pick, or else the tool. */
export function giveUp(): void {
  const { picks } = useBench.getState()
  if (picks.features.length > 0) setPicks(withoutLast(picks))
  else putDown()
}

/** Puts the pointer or the cross somewhere on the sheet. */
export function pointAt(
  pixel: Pixel | null,
  by: 'pointer' | 'cross',
  { takesOld, byHand }: Manner = PLAINLY,
  dragFrom: Pixel | null = null,
): void {
  const aims = pixel !== null && wanted(useBench.getState().picks) !== null
  pointer.setState({ pixel, by, byHand, takesOld, dragFrom, near: aims ? markNear(pixel) : null })
}

/** What a pick where the pointer is would be, once a key is held or let go over it. */
export function holdManner({ takesOld, byHand }: Manner): void {
  const now = pointer.getState()
  if (now.takesOld !== takesOld || now.byHand !== byHand) pointer.setState({ takesOld, byHand })
}

/** Where the cross is, or would come to: where the pointer or the newest pick is, or the middle of the box. */
export function crossPlace(): Pixel | null {
  const { pixel } = pointer.getState()
  if (pixel !== null) return pixel
  const here = onTheBench()
  return here === undefined || cameras.getState().box.width === 0 ? null : here.camera.centre
}
