import { expect, it } from 'vitest'
import { otherInkWords } from '../../../src/renderer/desk/in-hand/ink-words.ts'
import { inkWanted } from '../../../src/renderer/strokes/ink-wanted.ts'

it('strokes are looked for in the ink of the sheet, or in the other where that is asked for', () => {
  expect(inkWanted('dark', false)).toEqual({ ink: 'dark' })
  expect(inkWanted('light', false)).toEqual({ ink: 'light' })
  expect(inkWanted('dark', true)).toEqual({ ink: 'light' })
  expect(inkWanted('light', true)).toEqual({ ink: 'dark' })
})

it('where the sheet does not show its ink the scan about the pick tells, and the other is other than dark', () => {
  expect(inkWanted(null, false)).toEqual({})
  expect(inkWanted(null, true)).toEqual({ ink: 'light' })
})

it('the other ink is called as it is seen: of a blueprint looked at as its negative light, as of any drawing', () => {
  expect(otherInkWords('dark', false).label).toBe('Light on dark')
  expect(otherInkWords(null, false).label).toBe('Light on dark')
  expect(otherInkWords('light', true).label).toBe('Light on dark')
  expect(otherInkWords('light', false).label).toBe('Dark on light')
  expect(otherInkWords('dark', true).label).toBe('Dark on light')
})
