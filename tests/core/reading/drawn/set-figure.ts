import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Dice } from './dice.ts'
import type { Face } from './face.ts'
import type { FigurePart, PlannedFigure } from './figure-parts.ts'

/** How fractions stand: in the line, one over the other at a bar, or to both sides of a slash. */
export const LAYOUTS = ['inline', 'stacked', 'diagonal'] as const
export type FractionLayout = (typeof LAYOUTS)[number]

/** A glyph in its place: pixels, from the start of the figure's first baseline, x along it and y downward. */
export interface SetGlyph {
  /** `_` is the bar of a fraction. */
  readonly glyph: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** A figure set in one lettering, not yet drawn. */
export interface SetFigure {
  readonly face: Face
  readonly glyphs: readonly SetGlyph[]
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  /** Height of a full digit, pixels. */
  readonly height: number
}

/** How a draughtsman sets fractions, in heights of a full digit where it is a length: common practice, no source. */
interface FractionStyle {
  /** Digits of a stacked fraction against full ones. */
  readonly small: number
  /** From the bar to the digits over and under it. */
  readonly clear: number
}

class Setting {
  readonly glyphs: SetGlyph[] = []
  x = 0
  constructor(
    readonly face: Face,
    readonly height: number,
    readonly layout: FractionLayout,
    readonly style: FractionStyle,
    readonly d: Dice,
  ) {}

  /** Puts signs one after another and gives where they end. */
  run(signs: string, from: number, y: number, size: number, into = this.glyphs): number {
    let x = from
    for (const glyph of signs) {
      const room = this.face.room(glyph)
      if (glyph !== ' ') {
        const off = this.d.normal() * this.face.unsteady * size
        const at = { glyph, x, y: y + off, size }
        const box = { left: x + room.left * size, right: x + room.right * size }
        into.push({ ...at, ...box, top: y + off + room.top * size, bottom: y + off + room.bottom * size })
      }
      x += room.advance * size
    }
    return x
  }

  /** Two runs one over the other about a middle line, and perhaps a bar between them. */
  private stack(over: string, under: string, y: number, bar: boolean): void {
    const { height, style, face, d } = this
    const size = height * style.small
    const middle = y - height / 2
    const upper: SetGlyph[] = []
    const lower: SetGlyph[] = []
    this.run(over, 0, 0, size, upper)
    this.run(under, 0, 0, size, lower)
    const extent = (of: readonly SetGlyph[]) => ({
      left: Math.min(...of.map((g) => g.left)),
      right: Math.max(...of.map((g) => g.right)),
      top: Math.min(...of.map((g) => g.top)),
      bottom: Math.max(...of.map((g) => g.bottom)),
    })
    const [a, b] = [extent(upper), extent(lower)]
    const widest = Math.max(a.right - a.left, b.right - b.left)
    const width = widest * d.between(1.05, 1.3) + 0.05 * height
    const start = this.x + 0.08 * height
    const half = (face.stroke * height) / 2
    const lean = Math.tan((face.slant * Math.PI) / 180)
    const place = (of: readonly SetGlyph[], e: typeof a, dy: number, dx: number) => {
      const shift =
        start + (width - (e.right - e.left)) / 2 - e.left + dx + d.normal() * face.unsteady * height
      for (const g of of) {
        const moved = { left: g.left + shift, right: g.right + shift, top: g.top + dy, bottom: g.bottom + dy }
        this.glyphs.push({ ...g, ...moved, x: g.x + shift, y: g.y + dy })
      }
    }
    const clear = style.clear * height + half
    const reach = lean * (clear + size / 2)
    place(upper, a, middle - clear - a.bottom, reach * 0.8)
    if (bar) {
      const box = { left: start, right: start + width, top: middle - half, bottom: middle + half }
      this.glyphs.push({ glyph: '_', x: start, y: middle, size: width, ...box })
    }
    place(lower, b, middle + clear - b.top, -reach * 0.8)
    this.x = start + width + 0.12 * height
  }

  private fraction(over: string, under: string, y: number): void {
    const { height, style, d } = this
    const after = /[\d]/.test(this.glyphs.at(-1)?.glyph ?? '')
    if (this.layout === 'stacked') {
      this.stack(over, under, y, true)
      return
    }
    if (this.layout === 'inline') {
      if (after) this.x += d.between(0.4, 0.55) * height
      this.x = this.run(`${over}/${under}`, this.x, y, height)
      return
    }
    const size = height * style.small
    const raise = height * d.between(0.36, 0.48)
    if (after) this.x += 0.16 * height
    const end = this.run(over, this.x, y - raise, size)
    const slashEnd = this.run('/', end - 0.04 * height, y, height)
    this.x = this.run(under, slashEnd - 0.06 * height, y + height * d.between(0, 0.12), size) + 0.05 * height
  }

  part(part: FigurePart, y: number): void {
    if (part.kind === 'text') this.x = this.run(part.text, this.x, y, this.height)
    else if (part.kind === 'fraction') this.fraction(part.over, part.under, y)
    else this.stack(part.upper, part.lower, y, false)
  }
}

/** Sets a figure: where each of its glyphs stands. */
export function setFigure(
  { lines }: PlannedFigure,
  face: Face,
  height: number,
  layout: FractionLayout,
  d: Dice,
): SetFigure {
  // Small digits of small lettering are kept legible.
  const small = height < 22 ? d.between(0.75, 0.9) : d.between(0.62, 0.85)
  const setting = new Setting(face, height, layout, { small, clear: d.between(0.12, 0.22) }, d)
  const tall = layout === 'stacked' && lines.some((parts) => parts.some((part) => part.kind !== 'text'))
  lines.forEach((parts, i) => {
    const from = setting.glyphs.length
    setting.x = 0
    for (const part of parts) setting.part(part, 0)
    const line = setting.glyphs.splice(from)
    const down = i * height * (tall ? d.between(2.5, 2.8) : d.between(1.6, 2))
    const along = i * height * d.between(-0.3, 0.6)
    for (const g of line) {
      const moved = {
        left: g.left + along,
        right: g.right + along,
        top: g.top + down,
        bottom: g.bottom + down,
      }
      setting.glyphs.push({ ...g, ...moved, x: g.x + along, y: g.y + down })
    }
  })
  const { glyphs } = setting
  return {
    face,
    glyphs,
    height,
    left: Math.min(...glyphs.map((g) => g.left)),
    top: Math.min(...glyphs.map((g) => g.top)),
    right: Math.max(...glyphs.map((g) => g.right)),
    bottom: Math.max(...glyphs.map((g) => g.bottom)),
  }
}

/** Draws a figure that was set, in the context's own axes. */
export function drawSetFigure(context: SKRSContext2D, { face, glyphs, height }: SetFigure): void {
  for (const { glyph, x, y, size } of glyphs) {
    if (glyph !== '_') {
      face.draw(context, glyph, x, y, size)
      continue
    }
    context.lineWidth = Math.max(1, face.stroke * height)
    context.lineCap = 'round'
    context.beginPath()
    context.moveTo(x, y)
    context.lineTo(x + size, y)
    context.stroke()
  }
}
