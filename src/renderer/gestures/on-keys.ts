import { pixel } from '../../core/geometry/frames.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose, setPicks } from '../bench/choose.ts'
import { alongScan } from '../camera/camera.ts'
import {
  keepInSight,
  lookCloser,
  onTheBench,
  pan,
  showWholeSheet,
  zoomIn,
  zoomOut,
} from '../camera/look-at.ts'
import { lastPixel, nudged, wanted } from '../picking/picks.ts'
import { pointer } from '../picking/pointer-store.ts'
import { isForTheForm } from './for-the-form.ts'
import { turnHowToPick } from './how-to-pick-keys.ts'
import type { Held } from './on-pointer.ts'
import {
  crossPlace,
  endPath,
  giveUp,
  holdManner,
  type Manner,
  mannerOf,
  mayPick,
  pickAt,
  pointAt,
} from './picking.ts'

/** Steps of the arrow keys. Pixels of the scan: */
const FINE = 0.1
const COARSE = 1
/** CSS pixels: */
const STRIDE = 20
const LEAP = 100
const PAN = 60

const PICKS: ReadonlySet<string> = new Set(['Enter', 'p', 'P'])

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** Keys on the sheet. The function that comes back ends it. */
export function onKeys(element: HTMLElement, held: Held): () => void {
  const down = (event: KeyboardEvent): void => {
    holdManner(mannerOf(event))
    if (isForTheForm(event)) return
    if (event.key === ' ') {
      held.space = true
      element.dataset['space'] = 'true'
      event.preventDefault()
    } else if (pressed(event)) {
      event.preventDefault()
      event.stopPropagation()
    }
  }
  const release = (): void => {
    held.space = false
    delete element.dataset['space']
  }
  const up = (event: KeyboardEvent): void => {
    holdManner(mannerOf(event))
    if (event.key === ' ') release()
  }
  element.addEventListener('keydown', down)
  element.addEventListener('keyup', up)
  element.addEventListener('blur', release)
  return () => {
    element.removeEventListener('keydown', down)
    element.removeEventListener('keyup', up)
    element.removeEventListener('blur', release)
  }
}

/** Whether the key meant something here. */
function pressed(event: KeyboardEvent): boolean {
  const arrow = ARROWS[event.key]
  if (event.metaKey) return false
  if (event.altKey) return !event.ctrlKey && PICKS.has(event.key) && pickAtCross(mannerOf(event))
  if (arrow !== undefined) return onArrow(arrow, event)
  if (event.ctrlKey) return false
  switch (event.key) {
    case '+':
    case '=':
      zoomIn()
      return true
    case '-':
    case '−':
      zoomOut()
      return true
    case 'w':
    case 'W':
      showWholeSheet()
      return true
    case 'z':
    case 'Z':
      lookCloser(crossPlace())
      return true
    case 'Escape':
      if (useBench.getState().picks.tool.kind === 'look') choose(null)
      else giveUp()
      return true
    case 'Enter':
      return endPath() || pickAtCross(mannerOf(event))
    case 'p':
    case 'P':
      return pickAtCross(mannerOf(event))
    default:
      return turnHowToPick(event.key)
  }
}

function pickAtCross(manner: Manner): boolean {
  if (!mayPick() || wanted(useBench.getState().picks) === null) return false
  const place = crossPlace()
  if (place === null) return false
  pointAt(place, 'cross', manner)
  pickAt(place, manner)
  return true
}

function onArrow([right, down]: readonly [number, number], { ctrlKey, shiftKey }: KeyboardEvent): boolean {
  const here = onTheBench()
  const { picks } = useBench.getState()
  if (here === undefined) return false
  if (!mayPick()) {
    const step = shiftKey ? 3 * PAN : PAN
    pan(-right * step, -down * step)
    return true
  }
  // Right is right as the sheet is seen, however it is turned.
  const unit = { ...here.camera, zoom: 1 }
  const step = ctrlKey ? (shiftKey ? LEAP : STRIDE) / here.camera.zoom : shiftKey ? COARSE : FINE
  const [dx, dy] = alongScan(unit, right * step, down * step)
  const picked = lastPixel(picks)
  if (!ctrlKey && picked !== null && pointer.getState().arrows === 'pick') {
    const next = nudged(picks, dx, dy)
    setPicks(next)
    const at = lastPixel(next)
    pointAt(at, 'cross', { takesOld: false, byHand: true })
    if (at !== null) keepInSight(at)
    return true
  }
  const from = crossPlace()
  if (from === null || wanted(picks) === null) return true
  const { width, height } = here.size
  const to = pixel(Math.min(width, Math.max(0, from[0] + dx)), Math.min(height, Math.max(0, from[1] + dy)))
  pointAt(to, 'cross')
  pointer.setState({ arrows: 'cross' })
  keepInSight(to)
  return true
}
