import { describe, expect, it } from 'vitest'
import { exactInches } from '../../../../src/core/quantity/length.ts'
import { parseAngleTolerance, parseTolerance } from '../../../../src/core/quantity/parse/parse-tolerance.ts'
import { stoppingPlace } from '../stopping-place.ts'

describe('a stated tolerance', () => {
  it.each([
    ['±1/32', '1/32', '1/32'],
    ['+/-1/32"', '1/32', '1/32'],
    ['1/32', '1/32', '1/32'],
    ['+0 −1/64', '0', '1/64'],
    ['+1/32 -0', '1/32', '0'],
    ['+.005 -.002', '1/200', '1/500'],
    ['-0.002 +0.005', '1/200', '1/500'],
    ['+1-1/64', '1', '1/64'],
  ])('%j allows %s more and %s less', (text, plus, minus) => {
    const tolerance = parseTolerance(text)
    expect(exactInches(tolerance.plus).toFraction()).toBe(plus)
    expect(exactInches(tolerance.minus).toFraction()).toBe(minus)
  })

  it('is in the unit of the job when it has none', () => {
    expect(parseTolerance('±0.5', { unit: 'mm' }).plus.mm.toFraction()).toBe('1/2')
  })

  it.each([
    ['±1°', '1', '1'],
    ["30'", '1/2', '1/2'],
    ['+0° −1°', '0', '1'],
  ])('%j on an angle allows %s° more and %s° less', (text, plus, minus) => {
    const tolerance = parseAngleTolerance(text)
    expect(tolerance.plus.degrees.toFraction()).toBe(plus)
    expect(tolerance.minus.degrees.toFraction()).toBe(minus)
  })

  it.each([
    ['', 0],
    ['±', 1],
    ['+1/32', 5],
    ['-1/32', 5],
    ['±1/32 −0', 6],
    ['1/32 1/64', 5],
    ['+1/32 +0', 6],
  ])('%j is refused at %i', (text, at) => {
    expect(stoppingPlace(() => parseTolerance(text))?.at).toBe(at)
  })

  it('on an angle needs its unit', () => {
    expect(stoppingPlace(() => parseAngleTolerance('±1'))?.at).toBe(2)
    expect(stoppingPlace(() => parseAngleTolerance('±1° 2'))?.at).toBe(4)
  })
})
