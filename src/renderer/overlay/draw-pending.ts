import { algebraicCircle } from '../../core/geometry/algebraic-circle.ts'
import { type Pixel, pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import type { Mark } from '../../core/job/model/types.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { applied, type BoxSize, type Camera, matrixOf } from '../camera/camera.ts'
import { draggedPicks } from '../picking/dragged.ts'
import { foundMark, needsOf, type Picks, wanted } from '../picking/picks.ts'
import type { PointerPlace } from '../picking/pointer-store.ts'
import { isCornerToCorner } from '../picking/tool.ts'
import { centreStrokes } from './centre-strokes.ts'
import type { Inks } from './inks.ts'
import { type Leg, legsOf } from './legs.ts'
import { lettering } from './lettering.ts'
import { type PickedShape, pickedShapes } from './picked-shapes.ts'

type Context = CanvasRenderingContext2D

const CROSS = 7
/** Free middle of a cross, so that what is picked is not covered by it. */
const FREE = 2
const RING = 8

/** What is being picked and is not in the job yet. */
export interface Pending {
  picks: Picks
  pointer: PointerPlace
  marks: readonly Mark[]
}

/** Draws what is being picked; the context's unit is the CSS pixel. */
export function drawPending(
  context: Context,
  { picks, pointer, marks }: Pending,
  camera: Camera,
  box: BoxSize,
  inks: Inks,
): void {
  const matrix = matrixOf(camera, box)
  const at = (pixel: Pixel): Screen => applied(matrix, pixel)
  const shapes = pickedShapes(picks, marks)
  const twice = (draw: () => void): void => {
    context.strokeStyle = inks.ground
    context.lineWidth = 4
    context.globalAlpha = 0.7
    draw()
    context.strokeStyle = inks.ink
    context.lineWidth = 1.5
    context.globalAlpha = 1
    draw()
  }
  const aim = wanted(picks) === null ? null : pointer.pixel
  context.setLineDash([6, 4])
  twice(() => drawBetween(context, picks, shapes, aim, at))
  const { dragFrom } = pointer
  const dragged =
    dragFrom === null || pointer.pixel === null ? null : draggedPicks(picks, dragFrom, pointer.pixel)
  if (dragged !== null) twice(() => drawDragged(context, dragged, at))
  context.setLineDash([])
  twice(() => drawAngle(context, picks, shapes, at))
  shapes.forEach(({ feature, pixels }, i) => {
    for (const pixel of pixels) twice(() => drawCross(context, at(pixel), CROSS))
    const first = pixels[0]
    if (first !== undefined && needsOf(picks.tool).length > 1) drawNumber(context, at(first), i + 1, inks)
    if ('mark' in feature) for (const pixel of pixels) twice(() => drawRing(context, at(pixel), RING))
    const mark = foundMark(feature)
    if (mark === null) return
    const kept = mark.kind === 'point' ? [] : firstPlaces(mark)
    for (const { points } of centreStrokes(kept, mark.stroke?.leftOut ?? [], at)) {
      twice(() => drawPolyline(context, points))
    }
  })
  if (picks.tool.kind === 'look' || pointer.pixel === null) return
  if (pointer.by === 'cross') twice(() => drawCross(context, at(pointer.pixel as Pixel), 3 * CROSS))
  const near = marks.find(({ id }) => id === pointer.near)
  if (near === undefined || !pointer.takesOld) return
  for (const { pixels } of pickedShapes(
    { ...picks, features: [{ need: 'point', mark: near.id, done: true }] },
    [near],
  )) {
    for (const pixel of pixels) twice(() => drawRing(context, at(pixel), RING + 2))
  }
}

function drawPolyline(context: Context, points: readonly Screen[]): void {
  context.beginPath()
  points.forEach(([x, y], i) => {
    if (i === 0) context.moveTo(x, y)
    else context.lineTo(x, y)
  })
  context.stroke()
}

function drawCross(context: Context, [x, y]: Screen, size: number): void {
  context.beginPath()
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(x + FREE * dx, y + FREE * dy)
    context.lineTo(x + size * dx, y + size * dy)
  }
  context.stroke()
}

function drawRing(context: Context, [x, y]: Screen, radius: number): void {
  context.beginPath()
  context.arc(x, y, radius, 0, 2 * Math.PI)
  context.stroke()
}

function drawNumber(context: Context, [x, y]: Screen, number: number, inks: Inks): void {
  context.font = lettering().word
  context.textAlign = 'left'
  context.textBaseline = 'bottom'
  context.strokeStyle = inks.ground
  context.lineWidth = 3
  context.strokeText(String(number), x + CROSS, y - FREE)
  context.fillStyle = inks.ink
  context.fillText(String(number), x + CROSS, y - FREE)
}

/** The lines between what was picked, and on to where the next pick would be. */
function drawBetween(
  context: Context,
  { tool, features }: Picks,
  shapes: readonly PickedShape[],
  aim: Pixel | null,
  at: (pixel: Pixel) => Screen,
): void {
  const current = shapes.at(-1)
  const open = current !== undefined && !current.feature.done
  const polyline = (pixels: readonly Pixel[], closed: boolean): void => {
    context.beginPath()
    pixels.map(at).forEach(([x, y], i) => {
      if (i === 0) context.moveTo(x, y)
      else context.lineTo(x, y)
    })
    if (closed) context.closePath()
    context.stroke()
  }
  for (const { feature, pixels } of shapes) {
    const next = aim !== null && feature === current?.feature && open ? [aim] : []
    const mark = foundMark(feature)
    if (feature.need === 'circle' && pixels.length > 1)
      circleThrough(context, mark === null ? [...pixels, ...next] : firstPlaces(mark), at)
    else if (feature.need !== 'point') {
      polyline([...pixels, ...next], feature.need === 'closed path' && pixels.length + next.length > 2)
    }
  }
  const points = shapes.filter(({ feature }) => feature.need === 'point').flatMap(({ pixels }) => pixels)
  const onward =
    aim !== null && !open && points.length > 0 && points.length < needsOf(tool).length ? [aim] : []
  const all = [...points, ...onward]
  if (isCornerToCorner(tool)) {
    const [a, b] = all
    if (a !== undefined && b !== undefined) polyline([a, pixel(b[0], a[1]), b, pixel(a[0], b[1])], true)
  } else if (features.length > 0) {
    polyline(all, tool.kind === 'reference' && tool.reference === 'rectangle' && all.length > 3)
  }
}

/** What a drag would pick: from end to end, and the circle that it goes across. */
function drawDragged(context: Context, places: readonly Pixel[], at: (pixel: Pixel) => Screen): void {
  const [from, to] = [places[0], places.at(-1)]
  if (from !== undefined && to !== undefined) drawPolyline(context, [at(from), at(to)])
  circleThrough(context, places, at)
}

const ARC = 40

/** The angle that is measured, between the ways in which its two lines were picked. */
function drawAngle(
  context: Context,
  { tool }: Picks,
  shapes: readonly PickedShape[],
  at: (pixel: Pixel) => Screen,
): void {
  if (tool.kind !== 'measure' || tool.measure !== 'angle') return
  const [first, second] = shapes.map(({ pixels: [from, to] }): Leg<Screen> | null =>
    from === undefined || to === undefined ? null : [at(from), at(to)],
  )
  const legs = first == null || second == null ? null : legsOf(first, second)
  if (legs === null) return
  const [[ux, uy], [vx, vy]] = legs.ways
  const [from, to] = [Math.atan2(uy, ux), Math.atan2(vy, vx)]
  context.beginPath()
  context.arc(legs.meet[0], legs.meet[1], ARC, from, to, ux * vy - uy * vx < 0)
  context.stroke()
}

function circleThrough(context: Context, pixels: readonly Pixel[], at: (pixel: Pixel) => Screen): void {
  if (pixels.length < 3) return
  try {
    const { centre, radius } = algebraicCircle(pixels)
    const [x, y] = at(pixel(centre[0], centre[1]))
    const [ex, ey] = at(pixel(centre[0] + radius, centre[1]))
    drawRing(context, screen(x, y), Math.hypot(ex - x, ey - y))
  } catch (error) {
    if (!(error instanceof ScantlingError)) throw error
  }
}
