import type { Screen } from '../../core/geometry/frames.ts'
import type { BoxSize, Extent } from '../camera/camera.ts'
import { stretchesWithin } from './clip-line.ts'
import { beside } from './geometry-on-screen.ts'
import type { Inks } from './inks.ts'
import type { LineType } from './items.ts'
import type { Laid, Stroke } from './laid.ts'
import { lettering } from './lettering.ts'
import { drawFigure, setFigure } from './stacked-figure.ts'
import { TAB_HEIGHT, TAB_LINE, TAB_PADDING } from './view-tab.ts'

type Context = CanvasRenderingContext2D

/** Dashes of each line type, CSS pixels. */
const DASHES: Record<LineType, readonly number[]> = {
  full: [],
  dashed: [8, 4],
  double: [],
  dotted: [1.6, 3.4],
  'full and dashed': [],
  chain: [14, 4, 2, 4],
}
/** How much wider than its line what is chosen is laid under it. */
const HALO = 8
const APART = 1.7
const HEAD = 9

/** Draws everything over the sheet, in the order given; the context's unit is the CSS pixel. */
export function drawLaid(context: Context, laid: readonly Laid[], inks: Inks, box: BoxSize): void {
  const seen = { left: -OUTSIDE, top: -OUTSIDE, right: box.width + OUTSIDE, bottom: box.height + OUTSIDE }
  context.lineCap = 'butt'
  context.lineJoin = 'round'
  const isNote = ({ item }: Laid): boolean => item.kind === 'note'
  const notes = laid.filter(isNote)
  const others = laid.filter((one) => !isNote(one))
  for (const one of others) drawLines(context, one, inks, seen)
  // What is said of views can be read over a note's brackets, and no plate hides its number.
  for (const one of notes) drawLines(context, onlyFine(one, true), inks, seen)
  for (const one of others) drawLettering(context, one, inks)
  for (const one of notes) drawLines(context, onlyFine(one, false), inks, seen)
  for (const one of notes) drawLettering(context, one, inks)
}

const onlyFine = (laid: Laid, wanted: boolean): Laid => ({
  ...laid,
  strokes: laid.strokes.filter(({ fine = false }) => fine === wanted),
})

const inkOf = ({ item }: Laid, { ink, wrong }: Inks): string =>
  (item.kind === 'size' && item.wrong !== '') || (item.kind === 'residual' && item.wrong) ? wrong : ink

function drawLines(context: Context, laid: Laid, inks: Inks, seen: Extent): void {
  const { item, strokes, arrows } = laid
  const pen = item.chosen
    ? 2.2
    : item.kind === 'residual'
      ? 2
      : item.kind === 'mark' || item.kind === 'found figure'
        ? 1
        : 1.2
  context.globalAlpha = item.chosen ? 0.9 : 0.6
  context.strokeStyle = item.chosen ? inks.chosen : inks.ground
  context.setLineDash([])
  if (item.chosen) {
    context.strokeStyle = inks.rim
    context.lineWidth = pen + HALO + 2
    for (const line of strokes) stroke(context, whole(line), seen)
    context.strokeStyle = inks.chosen
  }
  context.lineWidth = pen + (item.chosen ? HALO : 2.5)
  for (const line of strokes) stroke(context, whole(line), seen)
  context.globalAlpha = 1
  context.strokeStyle = inkOf(laid, inks)
  context.fillStyle = inkOf(laid, inks)
  for (const line of strokes) drawStroke(context, line, pen, seen)
  context.setLineDash([])
  for (const { tip, angle } of arrows) drawHead(context, tip, angle)
}

function drawLettering(context: Context, laid: Laid, inks: Inks): void {
  const { item, figure, title, word } = laid
  if (figure !== null) {
    context.save()
    context.translate(figure.centre[0], figure.centre[1])
    context.rotate(figure.angle)
    const [w, h] = [figure.width, figure.height]
    plate(context, [-w / 2, -h / 2, w, h], item.chosen ? inks.chosen : inks.ground)
    context.fillStyle = inkOf(laid, inks)
    drawFigure(context, setFigure(context, figure.text))
    if (item.kind === 'size' && item.known) {
      context.strokeStyle = inkOf(laid, inks)
      context.lineWidth = 1
      context.strokeRect(-w / 2, -h / 2, w, h)
    }
    context.restore()
  }
  if (title !== null) drawTab(context, title, inks, item.chosen)
  if (word !== null) {
    context.font = lettering().word
    context.textAlign = 'left'
    context.textBaseline = 'middle'
    lettered(context, word.text, word.at, item.kind === 'mark' ? inks.ink : inks.wrong, inks.ground)
  }
}

/** Lettering stands on a piece of the ground, so that it can be read over anything. */
function plate(context: Context, box: [number, number, number, number], ground: string): void {
  context.globalAlpha = 0.88
  context.fillStyle = ground
  context.fillRect(...box)
  context.globalAlpha = 1
}

/** Lines that end outside the box are drawn on so far, CSS pixels. */
const OUTSIDE = 40

/** A line with its dashes where it is in sight. */
function stroke(context: Context, points: readonly Screen[], seen: Extent): void {
  for (const stretch of stretchesWithin(points, seen)) {
    context.lineDashOffset = stretch.start
    context.beginPath()
    stretch.points.forEach(([x, y], i) => {
      if (i === 0) context.moveTo(x, y)
      else context.lineTo(x, y)
    })
    if (comesRound(stretch.points)) context.closePath()
    context.stroke()
  }
}

/** Whether a line ends where it began, so that it has a corner there as well. */
function comesRound(points: readonly Screen[]): boolean {
  const [first, last] = [points[0], points.at(-1)]
  return points.length > 2 && first !== undefined && first[0] === last?.[0] && first[1] === last[1]
}

/** A closed line comes back to where it began. */
const whole = ({ points, closed }: Stroke): readonly Screen[] =>
  closed === true && points[0] !== undefined ? [...points, points[0]] : points

function drawStroke(context: Context, line: Stroke, pen: number, seen: Extent): void {
  const points = whole(line)
  const draw = (along: readonly Screen[], width: number, dashes: readonly number[]): void => {
    context.lineWidth = width
    context.setLineDash([...dashes])
    stroke(context, along, seen)
  }
  if (line.line === 'double' || line.line === 'full and dashed') {
    draw(beside(points, APART), pen * 0.8, [])
    draw(beside(points, -APART), pen * 0.8, line.line === 'double' ? [] : DASHES.dashed)
    return
  }
  const width = line.line === 'dotted' ? pen * 1.4 : line.fine === true ? pen * 0.8 : pen
  draw(points, width, DASHES[line.line])
}

function drawHead(context: Context, [x, y]: Screen, angle: number): void {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const back = (across: number): [number, number] => [
    x - HEAD * cos - across * sin,
    y - HEAD * sin + across * cos,
  ]
  context.beginPath()
  context.moveTo(x, y)
  context.lineTo(...back(2.4))
  context.lineTo(...back(-2.4))
  context.closePath()
  context.fill()
}

function lettered(context: Context, text: string, [x, y]: Screen, ink: string, ground: string): void {
  context.strokeStyle = ground
  context.lineWidth = 3
  context.strokeText(text, x, y)
  context.fillStyle = ink
  context.fillText(text, x, y)
}

/** The tab of a view on its frame: its name, and what is said of it below. */
function drawTab(
  context: Context,
  { centre: [x, y], width, height, title, lines }: NonNullable<Laid['title']>,
  { ink, ground, chosen }: Inks,
  isChosen: boolean,
): void {
  const { word, under } = lettering()
  const [left, top] = [x - width / 2, y - height / 2]
  plate(context, [left, top, width, height], isChosen ? chosen : ground)
  context.strokeStyle = ink
  context.setLineDash([])
  context.lineWidth = 1
  context.strokeRect(left + 0.5, top + 0.5, width - 1, height - 1)
  context.fillStyle = ink
  context.textAlign = 'left'
  context.textBaseline = 'middle'
  context.font = word
  context.fillText(title, left + TAB_PADDING, top + TAB_HEIGHT / 2 + 0.5)
  context.font = under
  lines.forEach((line, i) => {
    context.fillText(line, left + TAB_PADDING, top + TAB_HEIGHT + TAB_LINE * (i + 0.5) - 1)
  })
}
