import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { ARM_SCALES, type ArmScale, armsAt } from '../../../../src/core/imaging/detect/crossing-arms.ts'
import { searchContext } from '../../../../src/core/imaging/detect/detector.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 200
const MIDDLE = SIZE / 2
const LONG = ARM_SCALES[0] as ArmScale

/** A corner of a part, and past it the extension line of a dimension, thinner and after a gap. */
const CORNER = `<g transform="translate(${MIDDLE} ${MIDDLE}) rotate(0.5)" stroke="black">
  <path d="M120 0H0V120" fill="none" stroke-width="6"/><path d="M0 -22V-120" stroke-width="3"/></g>`

it('each arm of a corner is told once, from however many ways it is seen', async () => {
  const drawn = await inkOfSvg(CORNER, SIZE, SIZE, 0.7)
  const context = searchContext(await scanned(drawn, 'clean', false, randomStream(61)), { ink: 'dark' })
  for (const [x, y] of [
    [-2, 0],
    [0, 0],
    [2, -3],
  ] as const) {
    const ways = armsAt(context, pixel(MIDDLE + x, MIDDLE + y), LONG).map(({ direction }) =>
      Math.round((direction * 2) / Math.PI),
    )
    expect(ways).toEqual(expect.arrayContaining([0, 1]))
    expect(new Set(ways).size).toBe(ways.length)
  }
})
