import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../../src/core/formula/formula.ts'
import { FormulaError } from '../../../src/core/formula/formula-error.ts'
import { renameInFormula, standsIn, wordsOfFormula } from '../../../src/core/formula/rename-in-formula.ts'

describe('a name in a formula', () => {
  it.each([
    ['od + od_inside', 'bore + od_inside'],
    ['pi*(od -  t)', 'pi*(bore -  t)'],
    ['2od', '2bore'],
    ['od2 + od', 'od2 + bore'],
    ['flood + od', 'flood + bore'],
    ['sqrt(od^2)', 'sqrt(bore^2)'],
    ['overall=od+rim', 'overall=bore+rim'],
    ['1.5e3 * od', '1.5e3 * bore'],
    ['öd + od', 'öd + bore'],
    [`2'-3" - od + 4" * od`, `2'-3" - bore + 4" * bore`],
    [`od + 1/16"`, `bore + 1/16"`],
    [`rim = od − 3 3/8" / 2`, `rim = bore − 3 3/8" / 2`],
    [`od * sin(47° 30' 15") + od`, `bore * sin(47° 30' 15") + bore`],
  ])('od becomes bore in %s', (formula, renamed) => {
    expect(renameInFormula(formula, 'od', 'bore')).toBe(renamed)
  })

  it('is not seen inside a number', () => {
    expect(renameInFormula('1e3 + e3', 'e3', 'x')).toBe('1e3 + x')
    expect(standsIn('1e3 + 0xe3', 'e3')).toBe(false)
  })

  it('is found wherever the formula uses it when it is read', () => {
    const pieces = [
      'od',
      'x',
      'e3',
      '2',
      '0x',
      '0b1',
      '1.5',
      '.',
      ' ',
      ' in',
      '+',
      '*',
      '^',
      '(',
      ')',
      '#',
      '²',
      'º',
      'µ',
      '٣',
      '·',
      'Ⅷ',
      '\n',
      '"',
      "'",
      '°',
      '3/8"',
    ]
    let read = 0
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 7 }), (some) => {
        const formula = some.join('')
        let names: readonly string[]
        try {
          names = parseFormula(formula).names
        } catch (error) {
          expect(error).toBeInstanceOf(FormulaError)
          return
        }
        read++
        // Other letters than these are in no name of a dimension.
        expect(wordsOfFormula(formula)).toEqual(
          expect.arrayContaining(names.filter((name) => /^\w+$/.test(name))),
        )
      }),
      { numRuns: 5000 },
    )
    expect(read).toBeGreaterThan(300)
  })

  it('goes back to the very text when it is renamed back', () => {
    const piece = fc.constantFrom(
      'od',
      'od_2',
      ' ',
      '+',
      '2',
      '1e3',
      '(',
      ')',
      '.',
      'pi',
      '=',
      '"',
      "'",
      '3/8"',
      'é',
    )
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        const formula = pieces.join('')
        expect(renameInFormula(renameInFormula(formula, 'od', 'bore'), 'bore', 'od')).toBe(formula)
      }),
    )
  })
})
