import type { LineFit } from '../../geometry/fit-line.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Feature, Move } from './feature.ts'

/** What a line's picks make of it. */
export interface OwnLine extends Pick<Feature, 'scatter' | 'people'> {
  ends: [Pixel, Pixel]
  picking: Move[]
}

/** The pixels of all picks in one list that begins and ends as the first pick does, for that is the line's direction. */
export function pooled([first = [], ...again]: readonly (readonly Pixel[])[]): Pixel[] {
  return [...first.slice(0, -1), ...again.flat(), ...first.slice(-1)]
}

/** A line across itself by `across` and turned by `turn` (radians): moves of its ends at t along it. */
export function lineMoves(
  { direction: [dx, dy], at }: LineFit<Pixel>,
  source: Move['source'],
  across: number,
  turn: number,
): Move[] {
  return at.map((t, point): Move => {
    const by = across + turn * t
    return { source, point, dx: -dy * by, dy: dx * by }
  })
}

/** A line as it lies about another: across it at the other's centroid, and its slope against it. */
export function alongLine(line: LineFit<Pixel>, all: LineFit<Pixel>): [offset: number, slope: number] {
  const [dx, dy] = all.direction
  const along = line.direction[0] * dx + line.direction[1] * dy
  const across = dx * line.direction[1] - dy * line.direction[0]
  const slope = across / along
  const [px, py] = [line.centroid[0] - all.centroid[0], line.centroid[1] - all.centroid[1]]
  return [dx * py - dy * px - slope * (dx * px + dy * py), slope]
}

/** The ends of a line that lies so about another. */
export function endsOf(all: LineFit<Pixel>, offset: number, slope: number): [Pixel, Pixel] {
  const [dx, dy] = all.direction
  const [cx, cy] = all.centroid
  const end = (t: number): Pixel => {
    const by = offset + slope * t
    return pixel(cx + t * dx - by * dy, cy + t * dy + by * dx)
  }
  return [end(all.at[0]), end(all.at[1])]
}
