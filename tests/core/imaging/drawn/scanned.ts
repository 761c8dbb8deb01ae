import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between } from '../simulate/look.ts'
import type { Picture } from '../simulate/picture.ts'
import { noisy, oneBit, rounded, throughJpeg } from '../simulate/scan.ts'

/** What a drawing may have become before it is looked at. */
export const FINISHES = ['clean', 'JPEG', 'aged', 'one bit'] as const
export type Finish = (typeof FINISHES)[number]

/**
 * A drawing scanned.
 * @param ink share of each pixel; blueprint: light strokes on a dark ground
 * aged: paper foxed and yellowed from side to side, its grain larger than a pixel. one bit: at a level that nobody knows.
 */
export async function scanned(
  ink: Picture,
  finish: Finish,
  blueprint: boolean,
  random: RandomStream,
): Promise<GreyWindow> {
  const paper = blueprint ? between(random, 30, 70) : between(random, finish === 'aged' ? 150 : 205, 240)
  const stroke = blueprint ? between(random, 190, 240) : between(random, 15, 80)
  const { width, height } = ink
  const slope = finish === 'aged' ? [between(random, -0.15, 0.15), between(random, -0.15, 0.15)] : [0, 0]
  const uneven = (x: number, y: number) =>
    (slope[0] ?? 0) * (x - width / 2) + (slope[1] ?? 0) * (y - height / 2)
  const data = ink.data.map((share, i) => {
    const ground = paper + uneven(i % width, Math.floor(i / width))
    return ground + share * (stroke - ground)
  })
  const noise = finish === 'aged' ? between(random, 5, 9) : between(random, 2, 4)
  const grain = finish === 'aged' ? between(random, 0.5, 1.1) : 0
  const window = rounded(noisy({ width, height, data }, noise, random, grain))
  if (finish === 'JPEG') return throughJpeg(window, 60)
  if (finish === 'one bit') return oneBit(window, paper + between(random, 0.3, 0.7) * (stroke - paper))
  return window
}
