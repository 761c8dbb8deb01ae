import { expect, it } from 'vitest'
import { editDistance, nearestWord } from '../../../../src/core/job/text/edit-distance.ts'

// kitten/sitting, 3: the usual textbook example; saturday/sunday, 3: another. Both from memory.
it.each([
  ['kitten', 'sitting', 3],
  ['saturday', 'sunday', 3],
  ['titel', 'title', 1],
  ['legibilty', 'legibility', 1],
  ['tolerence', 'tolerance', 1],
  ['', 'mark', 4],
  ['DrawnScale', 'drawnscale', 0],
])('%s is %s after %i slips or fewer', (a, b, slips) => {
  expect(editDistance(a, b)).toBe(slips)
  expect(editDistance(b, a)).toBe(slips)
})

it('a short word is not taken for another that differs in half its letters', () => {
  expect(nearestWord('x1', ['by', 'at', 'id', 'u'])).toBeUndefined()
  expect(nearestWord('date', ['at', 'note', 'text'])).toBeUndefined()
  expect(nearestWord('sgima', ['size', 'sigma'])).toBe('sigma')
})
