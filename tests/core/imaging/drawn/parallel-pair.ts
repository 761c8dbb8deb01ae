import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between } from '../simulate/look.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 220
/** A pick is so far off the middle of its stroke at most, pixels. */
const OFF = 4

/** A stroke of a pair, across from the middle of the window: its centreline and its width, pixels. */
export interface OfPair {
  across: number
  width: number
}

/** Two strokes side by side, and a hand that points at the first. */
export interface ParallelPair {
  window: GreyWindow
  /** Radians. */
  direction: number
  strokes: readonly [OfPair, OfPair]
  /** A place so far along the first stroke, near to it as a hand is. */
  pick(along: number): Pixel
  /** How far a place lies across from the middle of the window. */
  acrossOf(place: Pixel): number
}

/** Walls, flanges, a dimension line beside an outline: 8 to 60 px of paper between, at any angle. */
export async function parallelPair(
  finish: Finish,
  blueprint: boolean,
  random: RandomStream,
): Promise<ParallelPair> {
  const level = random.uniform() < 0.3
  const direction = level
    ? random.uniform() < 0.5
      ? 0
      : Math.PI / 2
    : between(random, -Math.PI / 2, Math.PI / 2)
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
  const width = between(random, 1.5, 8)
  const other = random.uniform() < 0.5 ? width : between(random, 1.5, 8)
  const gap = between(random, 8, 60)
  const across = between(random, -3, 3)
  const side = random.uniform() < 0.5 ? 1 : -1
  const strokes = [
    { across, width },
    { across: across + side * (gap + (width + other) / 2), width: other },
  ] as const
  const at = (along: number, by: number): Pixel =>
    pixel(SIZE / 2 + along * dx - by * dy, SIZE / 2 + along * dy + by * dx)
  const drawing = strokes
    .map((stroke) => {
      const [from, to] = [at(-SIZE, stroke.across), at(SIZE, stroke.across)]
      return `<path d="M${from[0]} ${from[1]}L${to[0]} ${to[1]}" stroke="black" stroke-width="${stroke.width}"/>`
    })
    .join('')
  const ink = await inkOfSvg(drawing, SIZE, SIZE, between(random, 0.4, 1))
  return {
    window: await scanned(ink, finish, blueprint, random),
    direction,
    strokes,
    pick: (along) => at(along, across + between(random, -OFF, OFF)),
    acrossOf: ([x, y]) => (y - SIZE / 2) * dx - (x - SIZE / 2) * dy,
  }
}
