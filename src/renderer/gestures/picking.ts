import type { Pixel, Screen } from '../../core/geometry/frames.ts'
import { useBench } from '../bench/bench-store.ts'
import { putDown, setPicks } from '../bench/choose.ts'
import { toScreen } from '../camera/camera.ts'
import { cameras } from '../camera/camera-store.ts'
import { onTheBench } from '../camera/look-at.ts'
import { farFrom } from '../overlay/geometry-on-screen.ts'
import { shapeOf } from '../overlay/shape.ts'
import { pickQuality } from '../picking/pick-quality.ts'
import { canEnd, ended, takes, wanted, withMark, withoutLast, withPick } from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { isByHand } from '../strokes/by-hand.ts'
import { findUnderPicks } from '../strokes/find-under-picks.ts'

/** An old mark that lies so near is taken for what is wanted, CSS pixels. */
const NEAR = 8

/** Whether anything may be picked: the job can be written to, and the scan is the one that was picked on before. */
export function mayPick(): boolean {
  const { opened, sheet, picks } = useBench.getState()
  const scan = opened?.scans.find((state) => state.sheet === sheet)
  return (
    picks.tool.kind !== 'look' && opened?.writable === true && (scan === undefined || scan.state === 'ok')
  )
}

/** The old mark that a pick at a place of the scan would take; null when it would be a new one. */
function markNear(pixel: Pixel): string | null {
  const here = onTheBench()
  const { opened, picks } = useBench.getState()
  if (here === undefined || opened === null || !mayPick()) return null
  const at = (p: Pixel): Screen => toScreen(here.camera, here.box, p)
  const place = at(pixel)
  let best: { id: string; far: number } | null = null
  for (const mark of opened.job.marks) {
    if (mark.sheet !== here.sheet || !takes(picks, mark)) continue
    const shape = shapeOf(mark)
    if (shape === null) continue
    const far =
      shape.kind === 'point'
        ? farFrom(place, [at(shape.at)])
        : shape.kind === 'segment'
          ? farFrom(place, shape.ends.map(at))
          : shape.kind === 'circle'
            ? Math.abs(farFrom(place, [at(shape.centre)]) - shape.radius * here.camera.zoom)
            : farFrom(place, shape.pixels.map(at))
    if (far <= NEAR && (best === null || far < best.far)) best = { id: mark.id, far }
  }
  return best?.id ?? null
}

/** What a key that is held makes of a pick. */
export interface Manner {
  /** A new mark, though an old one lies near. */
  alwaysNew: boolean
  /** Exactly there, and not on the stroke. */
  byHand: boolean
}

const PLAINLY: Manner = { alwaysNew: false, byHand: false }

/** With Alt a new mark, with Shift one by hand. */
export const mannerOf = ({ altKey, shiftKey }: { altKey: boolean; shiftKey: boolean }): Manner => ({
  alwaysNew: altKey || shiftKey,
  byHand: shiftKey,
})

/**
 * Picks at a place of the scan; an old mark that lies near stands for it unless a new one is wanted, and the stroke
 * that is found there takes its place unless it is by hand.
 */
export function pickAt(pixel: Pixel, { alwaysNew, byHand }: Manner): void {
  if (!mayPick()) return
  const { picks, opened, pictures } = useBench.getState()
  const here = onTheBench()
  if (here === undefined) return
  const near = alwaysNew ? null : markNear(pixel)
  const mark = opened?.job.marks.find(({ id }) => id === near)
  const { sigma } = pickQuality(pointer.getState().by, here.camera.zoom, pictures[here.sheet])
  const hand = isByHand(picks, byHand)
  setPicks(mark === undefined ? withPick(picks, pixel, sigma, hand) : withMark(picks, mark))
  pointer.setState({ arrows: 'pick', snapped: null })
  void findUnderPicks()
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
  { alwaysNew, byHand }: Manner = PLAINLY,
): void {
  const aims = pixel !== null && !alwaysNew && wanted(useBench.getState().picks) !== null
  const snapped = aims ? markNear(pixel) : null
  pointer.setState({ pixel, by, byHand, snapped })
}

/** Where the cross is, or would come to: where the pointer or the newest pick is, or the middle of the box. */
export function crossPlace(): Pixel | null {
  const { pixel } = pointer.getState()
  if (pixel !== null) return pixel
  const here = onTheBench()
  return here === undefined || cameras.getState().box.width === 0 ? null : here.camera.centre
}
