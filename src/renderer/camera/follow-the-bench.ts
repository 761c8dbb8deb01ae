import { toRadians } from '../../core/geometry/angle-units.ts'
import { pixel } from '../../core/geometry/frames.ts'
import { aidsOf, useBench } from '../bench/bench-store.ts'
import { wholeSheet } from './camera.ts'
import { cameraOf, cameras, setCamera } from './camera-store.ts'

/** A job that is opened anew is looked at anew. */
let job: string | undefined

/** Gives the sheet on the bench a camera, turned and mirrored as it is to be looked at. */
export function cameraForTheBench(): void {
  const bench = useBench.getState()
  const { sheet, opened } = bench
  const { box } = cameras.getState()
  if (opened?.id !== job) {
    job = opened?.id
    cameras.setState({ of: {} })
  }
  const scan = opened?.job.sheets.find(({ id }) => id === sheet)?.scan
  if (sheet === null || scan === undefined || box.width === 0) return
  const aids = aidsOf(bench, sheet)
  const turn = toRadians(aids.turn)
  const camera = cameraOf(sheet)
  if (camera === undefined) {
    const start = { centre: pixel(0, 0), zoom: 1, turn, mirror: aids.mirror }
    setCamera(sheet, wholeSheet(start, box, scan))
  } else if (camera.turn !== turn || camera.mirror !== aids.mirror) {
    setCamera(sheet, { ...camera, turn, mirror: aids.mirror })
  }
}
