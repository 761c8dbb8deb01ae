import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { offOneCircle } from '../../../../src/core/job/from-picks/off-one-circle.ts'
import type { UnnamedMark } from '../../../../src/core/job/from-picks/picked-mark.ts'

const rim = (x: number, y: number, radius = 48): UnnamedMark => ({
  kind: 'circle',
  how: 'stroke',
  sigma: 0.2,
  pixels: [0.3, 1.7, 2.9, 4.4].map((at) => pixel(x + radius * Math.cos(at), y + radius * Math.sin(at))),
})

/** Holes of a cover on 443 px about 1480, 1740, on paper that is half a per cent shorter one way. */
const holes = (count: number, off: Readonly<Record<number, number>> = {}): UnnamedMark[] =>
  Array.from({ length: count }, (_, k) => {
    const at = (2 * Math.PI * k) / count + 0.5
    const from = 443 + (off[k] ?? 0)
    return rim(1480 + 0.995 * from * Math.cos(at), 1740 + from * Math.sin(at))
  })

it('Holes that are drawn on one circle lie on it, however the paper has shrunk', () => {
  expect(offOneCircle(holes(6))).toBeNull()
  expect(offOneCircle(holes(8, { 2: 9, 5: -9 }))).toBeNull()
})

it('The one hole that is no part of the circle is named, and by how much it is off it', () => {
  const off = offOneCircle(holes(6, { 4: -120 }))
  expect(off?.hole).toBe(4)
  expect(off?.by).toBeGreaterThan(117)
  expect(off?.by).toBeLessThan(123)
  expect(offOneCircle(holes(5, { 0: 60 }))?.hole).toBe(0)
})

it('Where nothing tells which is off, that is all that is said', () => {
  expect(offOneCircle(holes(4, { 1: 300 }))).toMatchObject({ hole: null })
  expect(offOneCircle(holes(8, { 1: 300, 2: -250 }))).toMatchObject({ hole: null })
})

it('Three holes always lie on one, and what is no circle is not spoken of', () => {
  expect(offOneCircle(holes(3, { 1: 300 }))).toBeNull()
  const flat: UnnamedMark = {
    kind: 'circle',
    how: 'hand',
    sigma: 1,
    pixels: [0, 1, 2].map((x) => pixel(x, x)),
  }
  expect(offOneCircle([...holes(6, { 4: -120 }), flat])).toBeNull()
})
