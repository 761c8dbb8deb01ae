import { describe, expect, it } from 'vitest'
import { FormulaError } from '../../../src/core/formula/formula-error.ts'
import { namesInRelation, parseRelation } from '../../../src/core/formula/relation-text.ts'
import { renameInFormula } from '../../../src/core/formula/rename-in-formula.ts'

describe('a relation with remarks', () => {
  it.each([
    ['drum = neck + rim # as cone = flange', ['drum', 'neck', 'rim']],
    ['drum # over all\n = neck + rim', ['drum', 'neck', 'rim']],
  ])('%j has the sides that stand outside them', (text, names) => {
    expect(namesInRelation(text)).toEqual(names)
    expect(namesInRelation(renameInFormula(text, 'rim', 'lip'))).toEqual(['drum', 'neck', 'lip'])
  })

  it.each(['drum # = neck', 'drum = neck = rim', 'drum'])('%j has no two sides', (text) => {
    expect(() => parseRelation(text)).toThrow(FormulaError)
  })
})
