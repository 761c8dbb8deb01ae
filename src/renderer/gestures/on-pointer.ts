import { distanceBetween } from '../../core/geometry/distance-between.ts'
import { type Pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose, setPicks } from '../bench/choose.ts'
import { toPixel } from '../camera/camera.ts'
import { onTheBench, pan, zoomAt } from '../camera/look-at.ts'
import type { Laid } from '../overlay/laid.ts'
import { nearest } from '../overlay/lay-out.ts'
import { draggedPicks } from '../picking/dragged.ts'
import { noPicks, type Picks, wanted, withPick } from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { isCornerToCorner, isSlot } from '../picking/tool.ts'
import { isByHand } from '../strokes/by-hand.ts'
import { Fingers } from './fingers.ts'
import { endPath, mannerOf, mayPick, pickAt, pointAt } from './picking.ts'
import { WheelHand } from './wheel-hand.ts'

/** A press that moves no further than this is a click, CSS pixels. */
const STILL = 4
/** A press that moves further than this picks along its way, and is no click of an unsteady hand, CSS pixels. */
const DRAG = 24
/** The same across a circle: holes are small. */
const DRAG_ACROSS = 8
/** Two clicks within this are a double click, ms. */
const DOUBLE = 400
/** What lies so near to a click is chosen, CSS pixels. */
const NEAR = 8
/** One notch of a wheel, 100 to 120 CSS pixels, zooms by about a fifth. */
const WHEEL = 0.0018
const PINCH = 0.01

interface Press {
  from: Screen
  last: Screen
  pans: boolean
  moved: boolean
}

/** Whether the sheet is dragged whatever tool is in hand, as while Space is held. */
export interface Held {
  space: boolean
}

const leastDrag = (): number => (wanted(useBench.getState().picks) === 'circle' ? DRAG_ACROSS : DRAG)

/** What a drag picks. The sheet is squared up by the newest line, whatever was picked before. */
function draggedFrom(picks: Picks, from: Pixel, to: Pixel, byHand: boolean): Pixel[] | null {
  if (!mayPick()) return null
  // By hand a round end takes three picks, and a drag has two.
  if (isSlot(picks.tool) && isByHand(picks, byHand)) return null
  if (picks.tool.kind !== 'straighten') return draggedPicks(picks, from, to)
  setPicks(noPicks(picks.tool))
  return [from, to]
}

/** Pointer and wheel on the sheet. The function that comes back ends it. */
export function onPointer(element: HTMLElement, held: Held, laid: () => readonly Laid[]): () => void {
  let press: Press | null = null
  let clicked: { at: Screen; when: number } | null = null
  const hand = new WheelHand()
  const place = (event: MouseEvent): Screen => {
    const { left, top } = element.getBoundingClientRect()
    return screen(event.clientX - left, event.clientY - top)
  }
  const pixelAt = (at: Screen): Pixel | null => {
    const here = onTheBench()
    return here === undefined ? null : toPixel(here.camera, here.box, at)
  }
  /** Where a drag began that would pick; null where the press moves the sheet, or is a click so far. */
  const dragOf = (pressed: Press | null, at: Screen): Pixel | null =>
    pressed === null || pressed.pans || distanceBetween(at, pressed.from) <= leastDrag()
      ? null
      : pixelAt(pressed.from)
  const looking = (): boolean => useBench.getState().picks.tool.kind === 'look'

  const fingers = new Fingers()

  const down = (event: PointerEvent): void => {
    if (event.button > 1) return
    event.preventDefault()
    if (event.pointerType === 'touch' && fingers.down(event.pointerId, place(event)) > 1) {
      // What two fingers do moves the sheet, whatever the first of them began.
      cancelled()
      return
    }
    element.focus({ preventScroll: true })
    element.setPointerCapture(event.pointerId)
    const at = place(event)
    press = { from: at, last: at, pans: looking() || held.space || event.button === 1, moved: false }
  }

  const move = (event: PointerEvent): void => {
    const at = place(event)
    const step = fingers.move(event.pointerId, at)
    if (step !== null) {
      zoomAt(step.about, step.factor)
      pan(step.by[0], step.by[1])
      return
    }
    if (press !== null) {
      const [x, y] = [at[0] - press.from[0], at[1] - press.from[1]]
      press.moved ||= Math.hypot(x, y) > STILL
      if (press.pans && press.moved) {
        if (element.dataset['dragged'] === undefined) element.dataset['dragged'] = 'true'
        pan(at[0] - press.last[0], at[1] - press.last[1])
        press.last = at
      }
    }
    pointAt(pixelAt(at), 'pointer', mannerOf(event), dragOf(press, at))
  }

  const up = (event: PointerEvent): void => {
    if (fingers.up(event.pointerId)) {
      cancelled()
      return
    }
    const pressed = press
    press = null
    pointer.setState({ dragFrom: null })
    delete element.dataset['dragged']
    if (pressed === null || event.button > 1) return
    const at = place(event)
    if (looking()) {
      if (!pressed.moved && event.button === 0) choose(nearest(laid(), at, NEAR)?.about ?? null)
      return
    }
    const pixel = pixelAt(at)
    if (pressed.pans || pixel === null) return
    const { picks } = useBench.getState()
    const from = pixelAt(pressed.from)
    if (pressed.moved && isCornerToCorner(picks.tool) && from !== null && mayPick()) {
      setPicks(withPick(withPick(noPicks(picks.tool), from), pixel))
      return
    }
    const manner = mannerOf(event)
    if (manner.takesOld && picks.tool.kind === 'figure') {
      const there = nearest(laid(), at, NEAR)?.about
      if (there?.kind === 'found figure') choose(there)
      return
    }
    const places =
      distanceBetween(at, pressed.from) > leastDrag() && from !== null && !manner.takesOld
        ? draggedFrom(picks, from, pixel, manner.byHand)
        : null
    if (places !== null) {
      const [first, ...rest] = places
      if (first !== undefined) pickAt(first, manner)
      // The first pick says which view it is of; that is known a frame later.
      requestAnimationFrame(() => {
        for (const place of rest) pickAt(place, manner)
      })
      return
    }
    const now = event.timeStamp
    const again = clicked !== null && now - clicked.when < DOUBLE && distanceBetween(at, clicked.at) <= STILL
    clicked = again ? null : { at, when: now }
    if (again) endPath()
    else pickAt(pixel, manner)
  }

  const cancelled = (event?: PointerEvent): void => {
    pointer.setState({ dragFrom: null })
    if (event !== undefined) fingers.up(event.pointerId)
    press = null
    delete element.dataset['dragged']
  }

  const leave = (): void => {
    if (press === null) pointAt(null, 'pointer')
  }

  const wheel = (event: WheelEvent): void => {
    event.preventDefault()
    const at = place(event)
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 32 : 1
    const [x, y] = [event.deltaX * lines, event.deltaY * lines]
    if (event.shiftKey && !event.ctrlKey) pan(-(x === 0 ? y : x), 0)
    else if (!event.ctrlKey && hand.isFingers(event)) pan(-x, -y)
    else zoomAt(at, Math.exp(-y * (event.ctrlKey ? PINCH : WHEEL)))
    pointAt(pixelAt(at), 'pointer', mannerOf(event))
  }

  const listeners = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: cancelled }
  for (const [name, listener] of Object.entries(listeners)) {
    element.addEventListener(name, listener as EventListener)
  }
  element.addEventListener('pointerleave', leave)
  element.addEventListener('wheel', wheel, { passive: false })
  return () => {
    for (const [name, listener] of Object.entries(listeners)) {
      element.removeEventListener(name, listener as EventListener)
    }
    element.removeEventListener('pointerleave', leave)
    element.removeEventListener('wheel', wheel)
  }
}
