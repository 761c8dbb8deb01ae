import fc from 'fast-check'
import { create, type MathNode, parseDependencies } from 'mathjs/number'
import { describe, expect, it } from 'vitest'
import { FormulaError } from '../../../src/core/formula/formula-error.ts'
import type { FormulaNode } from '../../../src/core/formula/formula-tree.ts'
import { parseTree } from '../../../src/core/formula/parse-tree.ts'

const { parse } = create({ ...parseDependencies })

/** A formula with all its brackets. */
function ours(node: FormulaNode): string {
  switch (node.kind) {
    case 'number':
      return String(node.value)
    case 'quantity':
      return 'a quantity'
    case 'name':
      return node.name
    case 'group':
      return ours(node.of)
    case 'negative':
      return `negative(${ours(node.of)})`
    case 'call':
      return `${node.name}(${node.args.map(ours).join(',')})`
    case 'binary':
      return `${node.does}(${ours(node.left)},${ours(node.right)})`
  }
}

const SAME: Readonly<Record<string, string>> = { pow: 'power', unaryMinus: 'negative' }

/** The same of the other reader; undefined for what formulas do not have. */
function theirs(node: MathNode): string | undefined {
  const { type, value, name, content, fn, args } = node as MathNode & Record<string, unknown>
  const parts = ((args as MathNode[] | undefined) ?? []).map(theirs)
  if (parts.includes(undefined)) return undefined
  switch (type) {
    case 'ConstantNode':
      return String(value)
    case 'SymbolNode':
      return String(name)
    case 'ParenthesisNode':
      return theirs(content as MathNode)
    case 'FunctionNode':
      return `${(fn as { name: string }).name}(${parts.join(',')})`
    case 'OperatorNode':
      return fn === 'unaryPlus' ? parts[0] : `${SAME[String(fn)] ?? String(fn)}(${parts.join(',')})`
    default:
      return undefined
  }
}

const pieces = 'a b_1 pi mm 2 3 0.5 .25 1e2 + - * / ^ ( ) sqrt( min( , + - * /'.split(' ')
const written = fc
  .array(fc.constantFrom(...pieces, ' ', ' '), { minLength: 1, maxLength: 12 })
  .map((some) => some.join(''))

describe('a formula is put together as another reader does it', () => {
  it('wherever both read it', () => {
    let both = 0
    fc.assert(
      fc.property(written, (text) => {
        let mine: string
        try {
          mine = ours(parseTree(text))
        } catch (error) {
          expect(error).toBeInstanceOf(FormulaError)
          return
        }
        let other: string | undefined
        try {
          other = theirs(parse(text))
        } catch {
          return
        }
        if (other === undefined) return
        both += 1
        expect(mine).toBe(other)
      }),
      { numRuns: 4000 },
    )
    expect(both).toBeGreaterThan(300)
  })
})
