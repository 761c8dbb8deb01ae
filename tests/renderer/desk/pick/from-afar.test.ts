import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { fromAfarInWords } from '../../../../src/renderer/desk/pick/from-afar.ts'
import { noPicks, type Picks, withPick } from '../../../../src/renderer/picking/picks.ts'

/** Both ends by hand, each as sure as the given standard uncertainty, pixels. */
const byHand = (sigma: number): Picks =>
  [pixel(100, 100), pixel(112, 100)].reduce(
    (picks, at) => withPick(picks, at, sigma, true),
    noPicks({ kind: 'measure', view: 'V1', measure: 'distance' }),
  )

it('a wall picked from where it is a pixel of the screen is cautioned', () => {
  expect(fromAfarInWords(byHand(12.5), { value: 0.24, U: 0.31 })).toBe(
    'Picked by hand from so far off that it cannot be told from nothing. Cancel, go close with Z, and pick it there.',
  )
  expect(fromAfarInWords(byHand(2.5), { value: 0.24, U: 0.06 })).toContain('known to ± 25 % only')
})

it('nothing is said where the hand could not be surer, or where it is sure enough', () => {
  expect(fromAfarInWords(byHand(1), { value: 0.02, U: 0.02 })).toBe('')
  expect(fromAfarInWords(byHand(12.5), { value: 30, U: 0.31 })).toBe('')
  expect(fromAfarInWords(byHand(12.5), { value: null, U: 0 })).toBe('')
})
