import { pixel } from '../../../core/geometry/frames.ts'
import { called } from '../../../core/job/ids/label.ts'
import type { MarkNeed } from '../../../core/job/model/mark-needs.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { choose, takeUp } from '../../bench/choose.ts'
import { type Camera, fitted } from '../../camera/camera.ts'
import { setCamera } from '../../camera/camera-store.ts'
import { onTheBench } from '../../camera/look-at.ts'
import { reach, shapeOf } from '../../overlay/shape.ts'
import { pointer } from '../../picking/pointer-store.ts'

/** The mark lies so far from the middle of what is seen, at most, as a share of the box. */
const ASIDE = 0.3
const CLOSEST = 3

const needOf = (mark: Mark): MarkNeed =>
  mark.kind === 'path' && mark.closed === true ? 'closed path' : mark.kind

/**
 * Takes up the tool that picks a mark again. The neighbourhood is brought into sight with the mark anywhere in it, and
 * the cross is taken away, so that nothing tells where it was.
 */
export function takeUpAgain(mark: Mark): void {
  choose(null)
  takeUp({ kind: 'repeat', mark: mark.id, called: called('mark', mark), need: needOf(mark) })
  pointer.setState({ pixel: null, near: null, arrows: 'cross' })
  const here = onTheBench()
  const shape = shapeOf(mark)
  if (here === undefined || shape === null || here.sheet !== mark.sheet) return
  // No larger than needed to see all of it with room round it.
  const { zoom } = fitted(
    here.camera,
    { width: here.box.width / 2, height: here.box.height / 2 },
    reach(shape),
    CLOSEST,
  )
  const camera: Camera = {
    ...here.camera,
    zoom,
    centre: fitted(here.camera, here.box, reach(shape), zoom).centre,
  }
  const aside = (size: number): number => ((2 * Math.random() - 1) * ASIDE * size) / zoom
  const [x, y] = camera.centre
  setCamera(here.sheet, { ...camera, centre: pixel(x + aside(here.box.width), y + aside(here.box.height)) })
}
