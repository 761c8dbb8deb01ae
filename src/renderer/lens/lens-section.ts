import type { Section } from '../../core/imaging/index.ts'
import type { LensInks } from './lens-lines.ts'

/** CSS pixels. */
export const SECTION_WIDTH = 216
export const SECTION_HEIGHT = 56
const AIR = 5
const DOT = 1.6
/** CSS pixels for each pixel of the scan, at most. */
const WIDEST = 12

type Context = CanvasRenderingContext2D

/** The cross profile of a stroke: what was seen as points, what was fitted as a line, dark downwards. */
export function drawSection(context: Context, section: Section | null, inks: LensInks): void {
  context.clearRect(0, 0, SECTION_WIDTH, SECTION_HEIGHT)
  if (section === null || section.at.length < 2) return
  context.strokeStyle = inks.soft
  context.lineWidth = 1
  context.setLineDash([])
  context.strokeRect(0.5, 0.5, SECTION_WIDTH - 1, SECTION_HEIGHT - 1)
  const half = Math.max(...section.at.map(Math.abs))
  const all = [...section.seen, ...section.fitted].filter(Number.isFinite)
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const across = Math.min(WIDEST, (SECTION_WIDTH / 2 - AIR) / half)
  const x = (at: number): number => SECTION_WIDTH / 2 + at * across
  const y = (grey: number): number =>
    AIR + (SECTION_HEIGHT - 2 * AIR) * (1 - (grey - low) / Math.max(high - low, 1e-9))
  context.strokeStyle = inks.act
  context.setLineDash([3, 3])
  context.beginPath()
  context.moveTo(x(0), 1)
  context.lineTo(x(0), SECTION_HEIGHT - 1)
  context.stroke()
  context.setLineDash([])
  context.lineWidth = 1.25
  context.beginPath()
  section.at.forEach((at, i) => {
    const grey = section.fitted[i] ?? 0
    if (i === 0) context.moveTo(x(at), y(grey))
    else context.lineTo(x(at), y(grey))
  })
  context.stroke()
  context.fillStyle = inks.ink
  section.at.forEach((at, i) => {
    const grey = section.seen[i]
    if (grey === undefined || !Number.isFinite(grey)) return
    context.beginPath()
    context.arc(x(at), y(grey), DOT, 0, 2 * Math.PI)
    context.fill()
  })
}
