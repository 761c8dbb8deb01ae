import { describe, expect, it } from 'vitest'
import { MAPPINGS } from '../../../../src/core/mapping/mappings.ts'
import { agreement, offStated } from '../../../../src/renderer/desk/scale/fit-words.ts'
import { difference } from '../../../../src/renderer/desk/scale/plain-figures.ts'
import { MAPPING_WORDS } from '../../../../src/renderer/words/mapping-words.ts'

describe('the fit of a view in words', () => {
  it('says that nothing checks sizes that only just suffice', () => {
    expect(agreement({ chi2: null, dof: 0, p: null })).toMatch(/^Nothing checks these sizes yet/)
  })

  it('says whether the known sizes agree', () => {
    expect(agreement({ chi2: 3.12, dof: 4, p: 0.538 })).toBe(
      'The known sizes agree as well as picks can tell: good sizes would differ this much 54 times in a hundred (chi-square 3.1, 4 to spare, p 0.54).',
    )
    expect(agreement({ chi2: 40, dof: 4, p: 4e-8 })).toMatch(
      /^The known sizes do not agree: .* less than once in a thousand .*p < 0\.001/,
    )
    expect(agreement({ chi2: 14, dof: 4, p: 0.0073 })).toMatch(
      /^The known sizes do not agree: good sizes would differ this much once in a hundred/,
    )
    expect(agreement({ chi2: 16.3, dof: 4, p: 0.0026 })).toMatch(/ less than once in a hundred/)
  })

  it('says by how much the scale is off', () => {
    expect(offStated(0.2482, 0.25)).toBe('0.7 % smaller than stated')
    expect(offStated(0.2501, 0.25)).toBe('as stated')
    expect(offStated(0.5045, 0.5)).toBe('0.9 % larger than stated')
  })

  it('gives a difference its sign, and none to nothing', () => {
    expect(difference(0.0152, 'in')).toBe('+0.015"')
    expect(difference(-0.0152, 'in')).toBe('−0.015"')
    expect(difference(-0.0001, 'in')).toBe('0.000"')
    expect(difference(1.234, 'mm')).toBe('+1.23 mm')
  })

  it('explains every mapping there is', () => {
    expect(Object.keys(MAPPING_WORDS).sort()).toEqual(Object.keys(MAPPINGS).sort())
  })
})
