import type { Units } from './formula-units.ts'

/** Where a part of a formula stands in it, UTF-16 code units. */
export interface Span {
  readonly at: number
  readonly end: number
}

export const OPERATIONS = {
  '+': 'add',
  '-': 'subtract',
  '*': 'multiply',
  '/': 'divide',
  '^': 'power',
} as const

export type Operation = (typeof OPERATIONS)[keyof typeof OPERATIONS]

/** A formula as it is put together. */
export type FormulaNode = Span &
  (
    | { readonly kind: 'number'; readonly value: number }
    /** A length in mm or an angle in radians, as it is written in the shop. */
    | { readonly kind: 'quantity'; readonly value: number; readonly units: Units; readonly marks: Marks }
    | { readonly kind: 'name'; readonly name: string }
    | { readonly kind: 'call'; readonly name: string; readonly args: readonly FormulaNode[] }
    | { readonly kind: 'negative'; readonly of: FormulaNode }
    | { readonly kind: 'group'; readonly of: FormulaNode }
    | {
        readonly kind: 'binary'
        readonly does: Operation
        readonly left: FormulaNode
        readonly right: FormulaNode
      }
  )

/** What a written quantity is marked with at its end. */
export type Marks = 'feet' | 'inches' | 'feet and inches' | 'angle'
