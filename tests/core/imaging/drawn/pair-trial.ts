import { findLine, findPoint, type Ink } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { count, type Landed, noneLanded } from './landed.ts'
import { type ParallelPair, parallelPair } from './parallel-pair.ts'
import type { Finish } from './scanned.ts'

/** Half of the length of a line that is picked, pixels. */
const HALF = 60

export interface PairTrial {
  points: Landed
  edges: Landed
  lines: Landed
}

/** Points, edges and lines on one of two strokes side by side. @param ink as a search is told it */
export async function pairTrial(
  finish: Finish,
  blueprint: boolean,
  cases: number,
  seed: number,
  ink?: Ink,
): Promise<PairTrial> {
  const trial = { points: noneLanded(), edges: noneLanded(), lines: noneLanded() }
  await many(cases, seed, async (random, i) => {
    const pair = await parallelPair(finish, blueprint, random)
    const place = pair.pick(0)
    const point = findPoint(pair.window, place, { ink })
    count(trial.points, point.kind === 'none' ? null : away(pair, pair.acrossOf(point.pixel)))
    const reading = i % 2 === 0 ? 'left' : 'right'
    const edge = findPoint(pair.window, place, { ink, reading })
    if (edge.kind === 'none') count(trial.edges, null)
    else {
      const onward = Math.cos(edge.direction - pair.direction) > 0
      const side = (reading === 'right') === onward ? 0.5 : -0.5
      count(trial.edges, away(pair, pair.acrossOf(edge.pixel), side))
    }
    const line = findLine(pair.window, pair.pick(-HALF), pair.pick(HALF), { ink })
    if (line.kind === 'none') count(trial.lines, null)
    else {
      // Both ends, lest a line that goes from one stroke to the other count as on either.
      const ends = line.ends.map((end) => away(pair, pair.acrossOf(end)))
      count(trial.lines, [0, 1].map((s) => Math.max(...ends.map((e) => e[s] ?? 0))) as [number, number])
    }
  })
  return trial
}

/** How far a place across is from both strokes, or from an edge of each. @param side of the centreline, in widths */
const away = ({ strokes: [mine, other] }: ParallelPair, across: number, side = 0): [number, number] => [
  Math.abs(across - mine.across - side * mine.width),
  Math.abs(across - other.across - side * other.width),
]
