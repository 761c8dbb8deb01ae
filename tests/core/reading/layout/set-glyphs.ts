import type { SeenGlyph } from '../../../../src/core/reading/glyphs/seen-glyph.ts'

/** What is set: words, or a fraction: stacked with its bar or without one, or small digits at a slash. */
export type SetPart =
  | string
  | { readonly over: string; readonly under: string; readonly by: 'bar' | 'nothing' | 'slash' | 'limits' }

/** Uniform in −1 to 1, repeatably. */
export type Jitter = () => number

export function jitterOf(seed: number): Jitter {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 31 - 1
  }
}

const HIGH = 22
/** [width, height, middle over the base line] in heights of a digit; anything else is as a digit. */
const SHAPES: Record<string, readonly [number, number, number]> = {
  '1': [0.25, 1, 0.5],
  '.': [0.15, 0.15, 0.08],
  "'": [0.12, 0.35, 0.85],
  '"': [0.3, 0.35, 0.85],
  '°': [0.35, 0.35, 0.85],
  '-': [0.45, 0.1, 0.45],
  '/': [0.5, 1.2, 0.5],
  '+': [0.6, 0.6, 0.45],
  M: [0.9, 1, 0.5],
}
const GAP = 0.17
const SPACE = 0.62

/** Glyphs as a network might see them, digits 22 pixels high: places and sizes jittered by so much of a height. */
export function setGlyphs(
  rows: readonly (readonly SetPart[])[],
  { jitter, amount = 0, slope = 0 }: { jitter: Jitter; amount?: number; slope?: number },
): SeenGlyph[] {
  const seen: SeenGlyph[] = []
  const put = (text: string, left: number, base: number, high: number): number => {
    const [w, h, up] = SHAPES[text] ?? [0.62, 1, 0.5]
    const size = () => 1 + amount * jitter()
    const x = left + (w * high) / 2
    const centre = [
      x + amount * high * jitter(),
      base - up * high + slope * x + 0.7 * amount * high * jitter(),
    ] as const
    seen.push({
      centre,
      width: w * high * size(),
      height: h * high * size(),
      present: 0.97,
      alternatives: [{ text, probability: 0.95 }],
    })
    return left + w * high
  }
  const word = (text: string, left: number, base: number, high: number): number => {
    let at = left
    for (const sign of text)
      at = sign === ' ' ? at + (SPACE - GAP) * high : put(sign, at, base, high) + GAP * high
    return at
  }
  const wide = (text: string, high: number): number =>
    [...text].reduce((sum, sign) => sum + ((SHAPES[sign]?.[0] ?? 0.62) + GAP) * high, -GAP * high)
  for (const [n, parts] of rows.entries()) {
    let at = 20
    const base = 60 + n * 1.8 * HIGH
    for (const part of parts) {
      if (typeof part === 'string') {
        at = word(part, at, base, HIGH)
        continue
      }
      const small = (part.by === 'limits' ? 0.6 : 0.68) * HIGH
      const middle = base - HIGH / 2
      at += 0.1 * HIGH
      if (part.by === 'slash') {
        at = word(part.over, at, base - 0.4 * HIGH, small) - 0.1 * HIGH
        at = put('/', at, base, HIGH) - 0.05 * HIGH
        at = word(part.under, at, base + 0.1 * HIGH, small)
        continue
      }
      const width = Math.max(wide(part.over, small), wide(part.under, small))
      const start = (text: string): number =>
        part.by === 'limits' ? at : at + (width - wide(text, small)) / 2
      word(part.over, start(part.over), middle - 0.16 * HIGH, small)
      word(part.under, start(part.under), middle + 0.16 * HIGH + small, small)
      if (part.by === 'bar')
        seen.push({
          centre: [at + width / 2, middle + slope * (at + width / 2)],
          width: width + 0.2 * HIGH,
          height: 2,
          present: 0.95,
          alternatives: [
            { text: '_', probability: 0.7 },
            { text: '-', probability: 0.25 },
          ],
        })
      at += width + GAP * HIGH + 0.1 * HIGH
    }
  }
  // A network gives them in no order that reading has.
  return seen.sort((a, b) => a.centre[1] - b.centre[1])
}
