import { fitLine, type LineFit } from '../../geometry/fit-line.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { KNOWN, newSource } from '../../uncertainty/source.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { deviationsOf, meanOf, NO_SCATTER } from './repeated-picks.ts'

type LineMark = Mark & { kind: 'line' }

/** The pixels of all picks in one list that begins and ends as the first pick does, for that is the line's direction. */
export function pooled(pixels: readonly Pixel[], repeats: readonly (readonly Pixel[])[]): Pixel[] {
  return [...pixels.slice(0, -1), ...repeats.flat(), ...pixels.slice(-1)]
}

/** A line stays a line under every mapping, so it is fitted in pixels, where all picks are uncertain alike. */
export function lineFeature(mark: LineMark): Feature {
  return mark.how === 'stroke' && mark.repeats !== undefined ? strokeLine(mark, mark.repeats) : handLine(mark)
}

/** A line across itself by `across` and turned by `turn` (radians): moves of its ends at t along it. */
function lineMoves(
  { direction: [dx, dy], at }: LineFit<Pixel>,
  source: Move['source'],
  across: number,
  turn: number,
) {
  return at.map((t, point): Move => {
    const by = across + turn * t
    return { source, point, dx: -dy * by, dy: dx * by }
  })
}

function feature(mark: LineMark, ends: readonly [Pixel, Pixel], picking: Move[]): Feature {
  return {
    mark: mark.id,
    kind: 'line',
    points: ends,
    closed: false,
    picking,
    draughting: draughtingOf(mark, 2),
  }
}

/** All pixels of all picks fitted together; picked again, they tell their own sigma by their scatter. */
function handLine(mark: LineMark): Feature {
  const { sigma, repeats = [] } = mark
  const line = fitLine(pooled(mark.pixels, repeats))
  const dof = line.n - 2
  const told = repeats.length > 0 && line.squares / dof > NO_SCATTER
  const u = told ? Math.sqrt(line.squares / dof) : sigma
  const label = pickingOf(mark)
  const estimate = told ? { dof } : KNOWN
  return {
    ...feature(mark, line.ends, [
      ...lineMoves(line, newSource(label, estimate), u * line.offset, 0),
      ...lineMoves(line, newSource(label, estimate), 0, u * line.rotation),
    ]),
    ...(line.n > 2 ? { scatter: { squares: line.squares, dof, sigma } } : {}),
  }
}

/** The mean of the lines that were found; what one fit leaves open stays, for the picture is the same each time. */
function strokeLine(mark: LineMark, repeats: readonly Pixel[][]): Feature {
  const label = pickingOf(mark)
  const first = fitLine(mark.pixels)
  const all = fitLine(pooled(mark.pixels, repeats))
  const [dx, dy] = all.direction
  const [cx, cy] = all.centroid
  const found = [mark.pixels, ...repeats].map((pixels) => {
    const line = fitLine(pixels)
    const along = line.direction[0] * dx + line.direction[1] * dy
    const across = dx * line.direction[1] - dy * line.direction[0]
    const slope = across / along
    const [px, py] = [line.centroid[0] - cx, line.centroid[1] - cy]
    return [dx * py - dy * px - slope * (dx * px + dy * py), slope] as const
  })
  const [offset = 0, slope = 0] = meanOf(found)
  const ends = all.at.map((t): Pixel => {
    const by = offset + slope * t
    return pixel(cx + t * dx - by * dy, cy + t * dy + by * dx)
  }) as unknown as [Pixel, Pixel]
  return {
    ...feature(mark, ends, [
      ...lineMoves(all, newSource(label), mark.sigma * first.offset, 0),
      ...lineMoves(all, newSource(label), 0, mark.sigma * first.rotation),
      ...byEnd(deviationsOf(found, label), all),
    ]),
    ...(first.n > 2 ? { scatter: { squares: first.squares, dof: first.n - 2, sigma: mark.sigma } } : {}),
  }
}

const byEnd = (deviations: ReturnType<typeof deviationsOf>, line: LineFit<Pixel>): Move[] =>
  deviations.flatMap(({ source, by: [across = 0, turn = 0] }) => lineMoves(line, source, across, turn))
