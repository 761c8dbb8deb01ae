import { type FigureRun, figureRuns, spaced } from '../parts/figure-runs.ts'
import { lettering } from './lettering.ts'

/** Between a whole number and its fraction, and on each side of a fraction. */
const AIR = 3

interface SetRun {
  run: FigureRun
  /** From the left end of the whole figure. */
  x: number
  wholeWidth: number
  fractionWidth: number
}

/** A written figure set with stacked fractions. */
export interface SetFigure {
  runs: readonly SetRun[]
  width: number
  height: number
}

type Context = CanvasRenderingContext2D

const known = new Map<string, SetFigure>()
/** More figures than any sheet shows at once. */
const MANY = 2000

/** Sets a figure as `draw` will draw it; what was set before is remembered. */
export function setFigure(context: Context, text: string): SetFigure {
  const before = known.get(text)
  if (before !== undefined) return before
  const { figure: font, fraction, figureSize, fractionSize } = lettering()
  let x = 0
  let stacked = false
  const runs = figureRuns(text).map((run): SetRun => {
    const start = x
    context.font = font
    if ('text' in run) {
      const wholeWidth = context.measureText(spaced(run.text)).width
      x += wholeWidth
      return { run, x: start, wholeWidth, fractionWidth: 0 }
    }
    stacked = true
    const wholeWidth = run.whole === undefined ? 0 : context.measureText(run.whole).width + AIR
    context.font = fraction
    const fractionWidth =
      Math.max(context.measureText(run.numerator).width, context.measureText(run.denominator).width) + 2
    x += wholeWidth + fractionWidth + 2 * AIR
    return { run, x: start, wholeWidth, fractionWidth }
  })
  const figure = { runs, width: x, height: stacked ? 2 * fractionSize + 3 : figureSize + 2 }
  if (known.size >= MANY) known.clear()
  known.set(text, figure)
  return figure
}

/** Forgets widths that were measured before the fonts were there. */
export const forgetFigures = (): void => known.clear()

/** Draws a set figure with its middle at the origin of the context. Uses the context's fillStyle. */
export function drawFigure(context: Context, { runs, width }: SetFigure): void {
  const { figure: font, fraction, fractionSize } = lettering()
  context.textBaseline = 'middle'
  for (const { run, x, wholeWidth, fractionWidth } of runs) {
    const left = x - width / 2
    context.textAlign = 'left'
    context.font = font
    if ('text' in run) {
      context.fillText(spaced(run.text), left, 0.5)
      continue
    }
    if (run.whole !== undefined) context.fillText(run.whole, left, 0.5)
    const start = left + wholeWidth + AIR
    context.font = fraction
    context.textAlign = 'center'
    context.fillText(run.numerator, start + fractionWidth / 2, -fractionSize / 2 - 0.5)
    context.fillText(run.denominator, start + fractionWidth / 2, fractionSize / 2 + 1.5)
    context.fillRect(start, -0.5, fractionWidth, 1)
  }
}
