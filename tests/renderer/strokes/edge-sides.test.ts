import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { roundWords } from '../../../src/renderer/picking/round-words.ts'
import { AS_IT_LIES, readingWords, seenFrom, sideOf, way } from '../../../src/renderer/strokes/edge-sides.ts'

const camera = (turn: number, mirror = false) => ({
  centre: pixel(0, 0),
  zoom: 2,
  turn: radians(turn),
  mirror,
})

describe('the edges of a straight stroke', () => {
  it('are upper and lower, whichever way a level one was picked', () => {
    // Going right, the left-hand side is up; going left, it is down (x right, y down).
    expect(sideOf('upper', way(1, 0.2), AS_IT_LIES)).toBe('left')
    expect(sideOf('upper', way(-1, 0.2), AS_IT_LIES)).toBe('right')
    expect(sideOf('lower', way(1, 0.2), AS_IT_LIES)).toBe('right')
  })

  it('are left and right of an upright one', () => {
    // Going down, the left-hand side is to the right of the scan.
    expect(sideOf('upper', way(0, 1), AS_IT_LIES)).toBe('right')
    expect(sideOf('upper', way(0, -1), AS_IT_LIES)).toBe('left')
  })

  it('are told as they are seen when the sheet is turned and mirrored', () => {
    // Turned a quarter clockwise, what runs right on the scan runs down, and its upper side is seen on the right.
    const quarter = seenFrom(camera(Math.PI / 2))
    expect(readingWords('left', way(1, 0), quarter)).toBe('right-hand edge')
    expect(readingWords('left', way(1, 0), AS_IT_LIES)).toBe('upper edge')
    expect(readingWords('left', way(0, 1), seenFrom(camera(0, true)))).toBe('left-hand edge')
    expect(readingWords('centre', way(0, 1), AS_IT_LIES)).toBe('centre')
  })

  it('have words that lead back to them', () => {
    for (let k = 0; k < 24; k++) {
      const direction = way(Math.cos(k / 4), Math.sin(k / 4))
      const said = readingWords(sideOf('upper', direction, AS_IT_LIES), direction, AS_IT_LIES)
      expect(['upper edge', 'left-hand edge']).toContain(said)
    }
  })
})

it('Round a circle clockwise, left is outside', () => {
  expect(roundWords('left')).toBe('outer edge')
  expect(roundWords('right')).toBe('inner edge')
})
