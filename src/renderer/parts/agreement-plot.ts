import { axisX, axisY, barX, dot, plot, ruleX, ruleY, text } from '@observablehq/plot'
import type { Unit } from '../../core/job/model/types.ts'
import type { AgreementPoint } from './agreement-points.ts'

/** Pixels for each point, for the axis below them, and for the names at the left. */
const BAND = 28
const FOOT = 46
const NAMES = 116

/**
 * Draws scaled less printed values with their bars. Everything is coloured by the window's own style, for a style
 * element in the drawing would be refused by its policy.
 * @param width pixels
 */
export function agreementPlot(points: readonly AgreementPoint[], unit: Unit, width: number): Element {
  const twice = new Set(points.map(({ name }) => name).filter((name, i, all) => all.indexOf(name) !== i))
  const drawn = points.map((point) => ({
    ...point,
    row: twice.has(point.name) ? `${point.name}, ${point.label}` : point.name,
  }))
  const drawing = plot({
    width,
    height: drawn.length * BAND + FOOT,
    marginLeft: NAMES,
    marginRight: 14,
    marginTop: 4,
    marginBottom: FOOT - 4,
    className: 'agreement-plot',
    x: { nice: true, inset: 6 },
    y: { type: 'band', domain: drawn.map(({ row }) => row), label: null, padding: 0.2 },
    marks: [
      axisX({
        ticks: Math.max(2, Math.floor((width - NAMES) / 60)),
        label: `scaled less printed, ${unit}`,
        labelAnchor: 'center',
        labelArrow: 'none',
        labelOffset: 36,
      }),
      axisY({ tickSize: 0, lineWidth: 9.5, textOverflow: 'ellipsis', label: null }),
      barX(drawn, { x1: ({ limit }) => -limit, x2: 'limit', y: 'row', className: 'agreement-limit' }),
      ruleX([0], { className: 'agreement-zero' }),
      ruleY(drawn, {
        x1: ({ deviation, U }) => deviation - U,
        x2: ({ deviation, U }) => deviation + U,
        y: 'row',
        className: 'agreement-interval',
      }),
      dot(
        drawn.filter(({ disputed }) => !disputed),
        { x: 'deviation', y: 'row', r: 3.5, symbol: 'circle', className: 'agreement-agrees' },
      ),
      dot(
        drawn.filter(({ disputed }) => disputed),
        { x: 'deviation', y: 'row', r: 5, symbol: 'diamond', className: 'agreement-disputes' },
      ),
      text(
        drawn.filter(({ disputed }) => disputed),
        { x: 'deviation', y: 'row', text: () => 'disputed', dy: -11, className: 'agreement-word' },
      ),
    ],
  })
  for (const style of drawing.querySelectorAll('style')) style.remove()
  return drawing
}
