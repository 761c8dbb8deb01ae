import { pixel } from '../../core/geometry/frames.ts'
import type { Camera } from './camera.ts'
import { cameraOf, cameras, setCamera } from './camera-store.ts'

/** ms */
const LASTS = 260

let gliding = 0

const noMotion = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches

/** Goes to a camera in a short glide, at once where motion is not wanted. Any other movement of the sheet ends it. */
export function glideTo(sheet: string, to: Camera): void {
  const from = cameraOf(sheet)
  cancelAnimationFrame(gliding)
  if (from === undefined || noMotion()) {
    setCamera(sheet, to)
    return
  }
  const began = performance.now()
  let last = cameras.getState().of[sheet]
  const step = (now: number): void => {
    if (cameraOf(sheet) !== last) return
    const t = Math.min(1, Math.max(0, (now - began) / LASTS))
    setCamera(sheet, between(from, to, t * t * (3 - 2 * t)))
    last = cameraOf(sheet)
    if (t < 1) gliding = requestAnimationFrame(step)
  }
  gliding = requestAnimationFrame(step)
}

function between(from: Camera, to: Camera, t: number): Camera {
  const mix = (a: number, b: number): number => a + (b - a) * t
  return {
    ...to,
    centre: pixel(mix(from.centre[0], to.centre[0]), mix(from.centre[1], to.centre[1])),
    zoom: from.zoom * (to.zoom / from.zoom) ** t,
  }
}
