import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../../src/core/formula/formula.ts'
import { FormulaError } from '../../../src/core/formula/formula-error.ts'
import { LENGTH } from '../../../src/core/formula/formula-units.ts'
import { applyEdit, readEdit } from '../../../src/core/job/edits/edit.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { exact } from '../../../src/core/uncertainty/uncertain.ts'
import { derived, dimension, printed, smallJob } from '../ledger/small-job.ts'

describe('what is no formula is refused in words', () => {
  it.each([
    ['', /empty/],
    ['   ', /empty/],
    ['drum +', /can't be read/],
    ['(drum', /can't be read/],
    ['drum ** 2', /can't be read/],
    ['drum = 3', /not part of formulas/],
    ['f(x) = x + 1', /not part of formulas/],
    ['"drum"', /not part of formulas/],
    ["'drum'", /not part of formulas/],
    ['[drum, neck]', /not part of formulas/],
    ['drum[1]', /not part of formulas/],
    ['{a: 1}', /not part of formulas/],
    ['drum.length', /not part of formulas/],
    ['drum.constructor', /not part of formulas/],
    ['drum.sqrt(4)', /not part of formulas/],
    ['drum?.x', /not part of formulas/],
    ['drum; neck', /not part of formulas/],
    ['drum == neck', /not part of formulas/],
    ['drum > neck', /not part of formulas/],
    ['drum > 0 ? 1 : 2', /not part of formulas/],
    ['not drum', /nothing says what `drum` does/],
    ['drum!', /not part of formulas/],
    ["drum'", /not part of formulas/],
    ['drum mod 2', /nothing says what `mod` does/],
    ['drum to mm', /nothing says what `to` does/],
    ['drum .* neck', /not part of formulas/],
    ['1:3', /not part of formulas/],
    ['drum & 1', /not part of formulas/],
    ['1e999', /as large as this number/],
    ['drum neck', /nothing says what `neck` does/],
    ['drum in', /nothing says what `in` does/],
    ['0x10', /nothing says what `x10` does/],
    ['sqrt', /in brackets, as in sqrt\(2\)/],
    ['drum + 2 3/8', /mark the inches or feet/],
    // Feet and inches without their marks, and a sign or a mark that was lost.
    ['drum + 1 ft 6', /nothing says what `6` does/],
    ['drum + 3 in 3/8', /nothing says what `3` does/],
    ['2 ft 3 + drum', /nothing says what `3` does/],
    ['drum 3/8', /nothing says what `3` does/],
    ['drum 3/8"', /nothing says what `3\/8"` does/],
    [`2' - 3"`, /may be feet and inches, or inches less than feet/],
    [`2'-3 + drum`, /may be feet and inches/],
    [`1'-14"`, /less than 12/],
    ['(drum', /not closed/],
    ['drum)', /closes none/],
    ['drum, neck', /comma stands between/],
    ['log(drum)', /no function `log`/],
    ['import(1)', /no function `import`/],
    ['eval("1")', /no function `eval`/],
    ['constructor(1)', /no function `constructor`/],
    ['toString(1)', /no function `toString`/],
    ['hasOwnProperty(1)', /no function `hasOwnProperty`/],
    ['__proto__(1)', /no function `__proto__`/],
    ['valueOf(drum)', /no function `valueOf`/],
    ['sqrt()', /takes 1 value, not 0/],
    ['sqrt(1, 2)', /takes 1 value, not 2/],
    ['atan2(1)', /takes 2 values, not 1/],
    ['hypot()', /takes 1 or more values, not 0/],
  ])('%s', (text, message) => {
    expect(() => parseFormula(text)).toThrow(FormulaError)
    expect(() => parseFormula(text)).toThrow(message)
  })

  it('a name of the language’s own is at most the name of a dimension, never what it means elsewhere', () => {
    for (const name of [
      'constructor',
      '__proto__',
      'toString',
      'prototype',
      'i',
      'version',
      'speedOfLight',
      'true',
      'null',
      'NaN',
      'Infinity',
      'end',
      'to',
      'E',
    ]) {
      const formula = parseFormula(`2 * ${name}`)
      expect(formula.names).toEqual([name])
      expect(formula.value(() => exact(7), FIRST_ORDER).value).toBe(14)
    }
  })

  it('a formula too long or nested too deep to read is refused and does no harm', () => {
    for (const text of [
      `${'('.repeat(900)}1${')'.repeat(900)}`,
      `1${'+drum'.repeat(9000)}`,
      '-'.repeat(1500),
    ]) {
      try {
        expect(parseFormula(text).value(() => exact(1), FIRST_ORDER).value).toBe(1)
      } catch (error) {
        expect(error).toBeInstanceOf(FormulaError)
      }
    }
    expect(() => parseFormula(`1${'+drum'.repeat(9000)}`)).toThrow(/too long/)
  })

  it('whatever is typed, it is a formula or a clear error, and a formula has a number', () => {
    const token = fc.constantFrom(
      ...'drum neck 2 0.5 1/2 pi in mm deg sqrt sin min ( ) + - * / ^ , . " [ ] = % ! : ; to e constructor'.split(
        ' ',
      ),
    )
    const typed = fc.oneof(
      fc.array(token, { maxLength: 12 }).map((t) => t.join(' ')),
      fc.string({ maxLength: 30 }),
    )
    fc.assert(
      fc.property(typed, (text) => {
        try {
          const formula = parseFormula(text)
          expect(typeof formula.value(() => exact(3), FIRST_ORDER).value).toBe('number')
          formula.units(() => LENGTH)
        } catch (error) {
          expect(error).toBeInstanceOf(FormulaError)
          expect((error as Error).message.length).toBeGreaterThan(10)
        }
      }),
      { numRuns: 3000, seed: 1911 },
    )
  })
})

it('a job that an older program kept with names side by side opens still, and the evidence says what is wrong', () => {
  const dimensions = [
    dimension('a', [printed('3"')]),
    dimension('b', [printed('4"')]),
    dimension('plate', [derived('a b')], { kind: 'area' }),
  ]
  const job = smallJob({ dimensions })
  const row = dimensionTable(job).rows[2]
  expect(row).toMatchObject({ value: null, status: 'open' })
  expect(row?.why).toContain('nothing says what `b` does there')
  const percent = dimension('part', [derived('a * 50%')])
  expect(dimensionTable(smallJob({ dimensions: [...dimensions, percent] })).rows[3]?.why).toContain('`%`')
  const item = derived('b a', 'e')
  expect(() => applyEdit(job, readEdit({ do: 'add-evidence', dimension: 'plate', item }))).toThrow(
    /nothing says/,
  )
})

it.each([
  ['such a relation', 'c = 2 a b / b', 'nothing says what `b` does there'],
  ['a relation whose = stands in a remark', 'c # is a = a + b', 'two sides'],
])('and one with %s opens too: the relation is not checked, and says why', (_, text, why) => {
  const dimensions = ['a', 'b', 'c'].map((name) => dimension(name, [printed('3"')]))
  const job = smallJob({ dimensions, relations: [{ id: 'Q1', text }] })
  const before = dimensionTable(job)
  expect(before.relations[0]).toMatchObject({ holds: false })
  expect(before.relations[0]?.problem).toContain(why)
  expect(before.rows.every(({ sumsOut }) => sumsOut === undefined)).toBe(true)
  const after = applyEdit(job, readEdit({ do: 'change-dimension', name: 'a', set: { label: 'rim' } })).job
  expect(dimensionTable(after, { before }).relations[0]?.problem).toBe(before.relations[0]?.problem)
})
