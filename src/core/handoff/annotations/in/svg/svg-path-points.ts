import { type Pixel, pixel } from '../../../../geometry/frames.ts'

const TOKEN = /[A-Za-z]|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g

/** How many numbers each command of a path takes. Source: SVG 1.1 (Second Edition), section 8.3. */
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, T: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, A: 7, Z: 0 }

/**
 * The points that the first stretch of an SVG path goes through. Of curves, where they end: `curved` says that there
 * were some. Null when it is no path.
 */
export function svgPathPoints(data: string): { points: Pixel[]; curved: boolean } | null {
  const tokens = data.match(TOKEN) ?? []
  const points: Pixel[] = []
  let curved = false
  let command = ''
  let [x, y] = [0, 0]
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at] ?? ''
    if (/[A-Za-z]/.test(token[0] ?? '')) {
      if (points.length > 0 && /[MmZz]/.test(token)) break
      command = token
      at++
    } else if (command === '' || /[Zz]/.test(command)) return null
    const kind = command.toUpperCase()
    const takes = TAKES[kind]
    if (takes === undefined) return null
    if (takes === 0) break
    const numbers = tokens.slice(at, at + takes).map(Number)
    if (numbers.length < takes || !numbers.every(Number.isFinite)) return null
    at += takes
    const relative = command !== kind
    const [a = 0, b = 0] = numbers.slice(-2)
    if (kind === 'H') x = relative ? x + a : a
    else if (kind === 'V') y = relative ? y + a : a
    else [x, y] = relative ? [x + a, y + b] : [a, b]
    curved ||= 'CSQTA'.includes(kind)
    points.push(pixel(x, y))
    // Further pairs after a move are lines.
    if (kind === 'M') command = relative ? 'l' : 'L'
  }
  return points.length === 0 ? null : { points, curved }
}
