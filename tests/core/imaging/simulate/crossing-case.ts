import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between, type Look } from './look.ts'
import type { Scene } from './picture.ts'
import { cleanScene, type Scan, scanOf } from './scan-of.ts'
import { acrossOf, bar, type Shape } from './shapes.ts'

const SIZE = 110

export type Meeting = 'X' | 'T' | 'L'

export interface CrossingCase extends Scan {
  look: Look
  place: Pixel
  directions: [number, number]
  rough: Pixel
  /** The scene without noise with each stroke moved across itself and turned about the crossing. */
  picture: (across: number, turn: number, otherAcross: number, otherTurn: number) => Scene
}

/** Two strokes of the same ink that cross (X), end on the other (T) or meet at their ends (L), 40° to 140° apart. */
export async function crossingCase(
  look: Look,
  random: RandomStream,
  meeting: Meeting,
): Promise<CrossingCase> {
  const direction = between(random, -Math.PI, Math.PI)
  const directions: [number, number] = [direction, direction + (between(random, 40, 140) * Math.PI) / 180]
  const place: Pixel = pixel(
    between(random, SIZE / 2 - 2, SIZE / 2 + 2),
    between(random, SIZE / 2 - 2, SIZE / 2 + 2),
  )
  const second = Math.min(12, Math.max(2, look.width * between(random, 0.6, 1.5)))
  const limits = (meets: boolean): readonly [number, number] | undefined => (meets ? [0, 400] : undefined)
  const strokes = (moves: readonly [number, number, number, number]): Shape[] => {
    const of = (i: 0 | 1, width: number, meets: boolean) => {
      const n = acrossOf(directions[i])
      const [across, turn] = [moves[2 * i] as number, moves[2 * i + 1] as number]
      return bar(
        pixel(place[0] + across * n[0], place[1] + across * n[1]),
        directions[i] + turn,
        width,
        limits(meets),
      )
    }
    return [of(0, look.width, meeting === 'L'), of(1, second, meeting !== 'X')]
  }
  const size = { width: SIZE, height: SIZE }
  return {
    ...(await scanOf({ ...size, strokes: strokes([0, 0, 0, 0]) }, look, random)),
    look,
    place,
    directions,
    rough: pixel(place[0] + between(random, -3, 3), place[1] + between(random, -3, 3)),
    picture: (...moves) => cleanScene({ ...size, strokes: strokes(moves) }, look),
  }
}
