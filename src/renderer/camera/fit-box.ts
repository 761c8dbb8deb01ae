import { useBench } from '../bench/bench-store.ts'
import { type BoxSize, type Camera, onTheSheet, wholeSheet } from './camera.ts'
import { cameras } from './camera-store.ts'

/** Of the zoom, and of the box: so little off is still the whole sheet. */
const NEARLY = 0.01

/** Gives sheets another box. Those that were seen whole are seen whole in it; others stay as near as they were. */
export function fitBox(box: BoxSize): void {
  const before = cameras.getState()
  const sheets = useBench.getState().opened?.job.sheets ?? []
  const of = { ...before.of }
  for (const { id, scan } of sheets) {
    const camera = of[id]
    if (camera === undefined || before.box.width === 0 || box.width === 0) continue
    of[id] = isWhole(camera, before.box, scan) ? wholeSheet(camera, box, scan) : onTheSheet(camera, scan)
  }
  cameras.setState({ box, of })
}

function isWhole(camera: Camera, box: BoxSize, sheet: BoxSize): boolean {
  const whole = wholeSheet(camera, box, sheet)
  const [dx, dy] = [camera.centre[0] - whole.centre[0], camera.centre[1] - whole.centre[1]]
  return (
    Math.abs(camera.zoom / whole.zoom - 1) < NEARLY &&
    Math.hypot(dx, dy) * camera.zoom < NEARLY * Math.min(box.width, box.height)
  )
}
