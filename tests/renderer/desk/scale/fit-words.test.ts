import { describe, expect, it } from 'vitest'
import { MAPPINGS } from '../../../../src/core/mapping/mappings.ts'
import { offStated, percentLonger } from '../../../../src/renderer/desk/scale/fit-words.ts'
import { difference } from '../../../../src/renderer/desk/scale/plain-figures.ts'
import { MAPPING_WHEN } from '../../../../src/renderer/words/mapping-when.ts'

describe('the fit of a view in words', () => {
  it('says by how much the scale is off', () => {
    expect(offStated(0.2482, 0.25)).toBe('0.7 % smaller than stated')
    expect(offStated(0.2501, 0.25)).toBe('as stated')
    expect(offStated(0.5045, 0.5)).toBe('0.9 % larger than stated')
  })

  it('says by how much lengths would come out otherwise', () => {
    expect(percentLonger(0.0107)).toBe('1.1 % longer')
    expect(percentLonger(-0.0032)).toBe('0.32 % shorter')
    expect(percentLonger(0.00002)).toBe('the same')
  })

  it('gives a difference its sign, and none to nothing', () => {
    expect(difference(0.0152, 'in')).toBe('+0.015"')
    expect(difference(-0.0152, 'in')).toBe('−0.015"')
    expect(difference(-0.0001, 'in')).toBe('0.000"')
    expect(difference(1.234, 'mm')).toBe('+1.23 mm')
  })

  it('explains every mapping there is', () => {
    expect(Object.keys(MAPPING_WHEN).sort()).toEqual(Object.keys(MAPPINGS).sort())
  })
})
