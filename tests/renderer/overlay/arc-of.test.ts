import { expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { UnnamedMark } from '../../../src/core/job/from-picks/picked-mark.ts'
import { arcOf } from '../../../src/renderer/overlay/arc-of.ts'
import { reach, shapeOf } from '../../../src/renderer/overlay/shape.ts'
import { spanOf } from '../../../src/renderer/overlay/span.ts'

const CENTRE = pixel(300, 200)
const RADIUS = 100
const degrees = (angle: number): number => (angle * Math.PI) / 180
const on = (angle: number): Pixel =>
  pixel(CENTRE[0] + RADIUS * Math.cos(degrees(angle)), CENTRE[1] + RADIUS * Math.sin(degrees(angle)))
/** Every 5° from one angle to another, but for a stretch that something crosses. */
const places = (from: number, to: number): Pixel[] =>
  Array.from({ length: (to - from) / 5 + 1 }, (_, i) => from + 5 * i)
    .filter((angle) => angle < 40 || angle > 60)
    .map(on)

const marked = (as: 'arc' | 'circle', pixels: Pixel[]): UnnamedMark => ({
  kind: 'circle',
  how: 'stroke',
  sigma: 0.1,
  pixels,
  stroke: { as, reading: 'centre', rough: pixels.slice(0, 3), width: 3 },
})

it.each([
  [-30, 90],
  [100, 260],
  [170, 350],
])('an arc from %i° to %i° is drawn from its one end to its other, over what was left out', (from, to) => {
  const arc = arcOf(CENTRE, places(from, to))
  const [a, b] = arc ?? [Number.NaN, Number.NaN]
  expect(b - a).toBeCloseTo(degrees(to - from), 9)
  expect(Math.cos(a - degrees(from))).toBeCloseTo(1, 9)
})

it('is all of its circle where there are places all round, whatever is left out', () => {
  expect(arcOf(CENTRE, places(0, 355))).toBeNull()
})

it('keeps to itself what is drawn of a mark, and ends its radius in its middle; a whole circle stays whole', () => {
  const arc = shapeOf(marked('arc', places(100, 200)))
  if (arc === null) throw new Error('It has no shape.')
  expect(Math.max(...reach(arc).map(([x]) => x))).toBeLessThan(CENTRE[0])
  const span = spanOf('radius', [arc])
  expect(span).toMatchObject({
    kind: 'straight',
    to: [expect.closeTo(on(150)[0], 6), expect.closeTo(on(150)[1], 6)],
  })
  expect(shapeOf(marked('circle', places(100, 200)))).not.toHaveProperty('arc')
})
