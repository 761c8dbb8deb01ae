import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees } from '../../../../src/core/geometry/angle-units.ts'
import { plainTurn, quartersAndRest, turnInWords } from '../../../../src/renderer/desk/sheet/turn.ts'

describe('the turn of a sheet', () => {
  it('is said in words', () => {
    expect(turnInWords(degrees(0))).toBe('not turned')
    expect(turnInWords(degrees(90))).toBe('90.0° clockwise')
    expect(turnInWords(degrees(270))).toBe('90.0° anticlockwise')
    expect(turnInWords(degrees(-0.3))).toBe('0.3° anticlockwise')
  })

  it('comes back to the same after four quarters', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1799, max: 1800 }), (tenths) => {
        const turn = degrees(tenths / 10)
        const round = [90, 90, 90, 90].reduce(
          (now, quarter) => plainTurn(degrees(now + quarter)),
          plainTurn(turn),
        )
        expect(round).toBe(plainTurn(turn))
      }),
    )
  })

  it('is whole quarters and a fine turn of at most 45°', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1799, max: 1800 }), (tenths) => {
        const { quarters, rest } = quartersAndRest(degrees(tenths / 10))
        expect(Math.abs(rest)).toBeLessThanOrEqual(45)
        expect(90 * quarters + rest).toBeCloseTo(tenths / 10, 9)
      }),
    )
  })
})
