import { expect, it } from 'vitest'
import { countedUp } from '../../../../src/renderer/desk/pick/counted-up.ts'

const among =
  (...taken: string[]) =>
  (label: string): boolean =>
    taken.includes(label)

it.each([
  ['Hole', [], 'Hole 2'],
  ['Hole 2', [], 'Hole 3'],
  ['Hole 2', ['Hole 3', 'Hole 4'], 'Hole 5'],
  ['Flange 3, hole 09', [], 'Flange 3, hole 10'],
  ['Row 2, left', [], 'Row 3, left'],
  [' ', [], ''],
])('the next after %j is %j', (label, taken, next) => {
  expect(countedUp(label, among(...taken))).toBe(next)
})
