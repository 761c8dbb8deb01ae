import { angleInRadians } from '../quantity/angle.ts'
import { lengthIn } from '../quantity/length.ts'
import { NotationError } from '../quantity/notation/notation-error.ts'
import { parseAngle } from '../quantity/parse/parse-angle.ts'
import { parseLength } from '../quantity/parse/parse-length.ts'
import { type CoreReason, reason } from '../words/core-words.ts'
import { constantOf } from './formula-constants.ts'
import { type FormulaError, stoppedAt } from './formula-error.ts'
import { FORMULA_FUNCTIONS, FUNCTION_NAMES } from './formula-functions.ts'
import { type FormulaToken, formulaTokens } from './formula-tokens.ts'
import { type FormulaNode, type Marks, OPERATIONS } from './formula-tree.ts'
import { ANGLE, LENGTH } from './formula-units.ts'

/** Brackets and powers within one another; what is deeper could exhaust the call stack. */
const DEEPEST = 200

const isOperation = (text: string): text is keyof typeof OPERATIONS => Object.hasOwn(OPERATIONS, text)

function marksOf(written: string): Marks {
  if (/[°º˚]/.test(written)) return 'angle'
  const inches = /(?:["”“″]|['’‘′´]{2})$/.test(written)
  if (!inches) return 'feet'
  return /['’‘′´](?!['’‘′´])./.test(written.replace(/['’‘′´]{2}$/, '"')) ? 'feet and inches' : 'inches'
}

/** Reads a formula from its signs, by recursive descent. */
class Reader {
  readonly #text: string
  readonly #tokens: readonly FormulaToken[]
  #next = 0
  #depth = 0

  constructor(text: string) {
    this.#text = text
    this.#tokens = formulaTokens(text)
  }

  whole(): FormulaNode {
    // Before anything else: what an equation has to the left of its sign is no formula either.
    const equals = this.#tokens.find((token) => token.kind === 'sign' && token.text === '=')
    if (equals !== undefined) throw this.#stop(equals, this.#noPart(equals))
    const node = this.#sum()
    if (this.#peek().kind !== 'end') throw this.#stop(this.#peek(), this.#afterWhole())
    return node
  }

  #peek(ahead = 0): FormulaToken {
    const last = this.#tokens.length - 1
    return this.#tokens[Math.min(this.#next + ahead, last)] as FormulaToken
  }

  #take(): FormulaToken {
    const token = this.#peek()
    this.#next += 1
    return token
  }

  #accept(...signs: string[]): FormulaToken | undefined {
    const token = this.#peek()
    return token.kind === 'sign' && signs.includes(token.text) ? this.#take() : undefined
  }

  #stop({ at }: { readonly at: number }, problem: CoreReason): FormulaError {
    return stoppedAt(this.#text, at, problem)
  }

  #noPart({ text }: FormulaToken): CoreReason {
    return reason('formula.no-part-of-formulas', { expression: text, functions: FUNCTION_NAMES })
  }

  /** What to say of a sign with which a formula can't go on. */
  #afterWhole(): CoreReason {
    const { kind, text } = this.#peek()
    if (kind === 'sign' && text === ')') return reason('formula.bracket-not-opened')
    if (kind === 'sign' && text === ',') return reason('formula.stray-comma')
    if (kind === 'sign') return this.#noPart(this.#peek())
    return reason('formula.nothing-between', { word: text })
  }

  #deeper<T>(read: () => T): T {
    if (++this.#depth > DEEPEST) throw this.#stop(this.#peek(), reason('formula.too-deep'))
    const result = read()
    this.#depth -= 1
    return result
  }

  #binary(left: FormulaNode, sign: string, right: FormulaNode): FormulaNode {
    const does = isOperation(sign) ? OPERATIONS[sign] : 'multiply'
    return { kind: 'binary', does, left, right, at: left.at, end: right.end }
  }

  #sum(): FormulaNode {
    let node = this.#product()
    for (;;) {
      const sign = this.#accept('+', '-')
      if (sign === undefined) return node
      const right = this.#product()
      this.#checkFeetLess(node, sign, right)
      node = this.#binary(node, sign.text, right)
    }
  }

  /** `2' - 3"` is two feet and three inches on a drawing, and three inches less than two feet in a sum. */
  #checkFeetLess(left: FormulaNode, sign: FormulaToken, right: FormulaNode): void {
    const last = left.kind === 'binary' && left.does === 'add' ? left.right : left
    if (sign.text !== '-' || last.kind !== 'quantity' || last.marks !== 'feet') return
    const inches = right.kind === 'quantity' && right.marks === 'inches'
    const bare = right.kind === 'number' && right.at === sign.end && sign.at === last.end
    if (!inches && !bare) return
    const feet = this.#text.slice(last.at, last.end)
    const rest = this.#text.slice(right.at, right.end)
    throw this.#stop(sign, reason('formula.feet-or-less', { feet, inches: bare ? `${rest}"` : rest }))
  }

  #product(): FormulaNode {
    let node = this.#juxtaposed()
    for (;;) {
      const sign = this.#accept('*', '/')
      if (sign === undefined) return node
      node = this.#binary(node, sign.text, this.#juxtaposed())
    }
  }

  /** Factors side by side: `2 pi`, `2 (a + b)`. They bind closer than a sign does. */
  #juxtaposed(): FormulaNode {
    let node = this.#ratio()
    let last = node
    while (this.#factorFollows(node, last)) {
      last = this.#ratio()
      node = this.#binary(node, '*', last)
    }
    return node
  }

  #factorFollows(before: FormulaNode, last: FormulaNode): boolean {
    const next = this.#peek()
    if (next.kind === 'sign') return next.text === '('
    if (next.kind === 'end') return false
    if (next.kind === 'quantity')
      throw this.#stop(next, reason('formula.nothing-between', { word: next.text }))
    if (next.kind === 'number') {
      // `1 ft 6` is feet and inches to whoever writes it, and `w 3/4` has lost a sign or a mark.
      if (last.kind === 'name') throw this.#stop(next, reason('formula.nothing-between', { word: next.text }))
      if (last.kind !== 'number' && last.kind !== 'negative' && last.kind !== 'quantity') {
        return last.kind !== 'binary'
      }
      throw this.#stop(
        next,
        reason('formula.two-numbers', { first: this.#text.slice(before.at, before.end) }),
      )
    }
    // `0x10` is no number here, and nobody means nothing times x10.
    if (last.kind === 'number' && last.value === 0 && last.end === next.at) {
      throw this.#stop(next, reason('formula.nothing-between', { word: next.text }))
    }
    const names = last.kind === 'name' && constantOf(last.name) === undefined
    const unit = constantOf(next.text)
    // A name and a name are a slip of the pen; a number of π, of inches, or of a dimension is one.
    if (names && (unit === undefined || next.text === 'in')) {
      throw this.#stop(next, reason('formula.nothing-between', { word: next.text }))
    }
    if (last.kind === 'quantity') {
      throw this.#stop(next, reason('formula.nothing-between', { word: next.text }))
    }
    return true
  }

  /** `3/8 in` is three eighths of an inch: two numbers with a stroke between them bind closest before a name. */
  #ratio(): FormulaNode {
    let from = this.#next
    let node = this.#signed()
    let last = node
    // A number with at most one sign before it.
    const isPlain = (): boolean => isPlainNumber(last) && this.#next - from <= 2
    while (this.#peek().kind === 'sign' && this.#peek().text === '/' && isPlain()) {
      const [number, after] = [this.#peek(1), this.#peek(2)]
      const factor = after.kind === 'name' || (after.kind === 'sign' && after.text === '(')
      if (number.kind !== 'number' || !factor) break
      this.#take()
      from = this.#next
      last = this.#signed()
      node = this.#binary(node, '/', last)
    }
    return node
  }

  #signed(): FormulaNode {
    const start = this.#peek()
    let negative = 0
    for (;;) {
      const sign = this.#accept('+', '-')
      if (sign === undefined) break
      if (sign.text === '-') negative += 1
    }
    const node = this.#power()
    if (start.at === node.at || negative === 0) return { ...node, at: start.at }
    // Each minus for itself, so that it comes to the same to the last bit however many there are.
    let signed = node
    for (let i = 0; i < negative; i++) signed = { kind: 'negative', of: signed, at: start.at, end: node.end }
    return signed
  }

  #power(): FormulaNode {
    const base = this.#atom()
    if (!this.#accept('^')) return base
    return this.#binary(
      base,
      '^',
      this.#deeper(() => this.#signed()),
    )
  }

  #atom(): FormulaNode {
    const token = this.#peek()
    const { at, end } = token
    switch (token.kind) {
      case 'number': {
        this.#take()
        const value = Number(token.text)
        if (!Number.isFinite(value)) throw this.#stop(token, reason('formula.number-too-large'))
        return { kind: 'number', value, at, end }
      }
      case 'quantity':
        return this.#quantity(this.#take())
      case 'name':
        this.#take()
        if (this.#peek().kind === 'sign' && this.#peek().text === '(') return this.#call(token)
        if (Object.hasOwn(FORMULA_FUNCTIONS, token.text)) {
          throw this.#stop(token, reason('formula.function-without-value', { name: token.text }))
        }
        return { kind: 'name', name: token.text, at, end }
      case 'sign': {
        if (!this.#accept('(')) break
        const of = this.#deeper(() => this.#sum())
        const close = this.#accept(')')
        if (close === undefined) throw this.#stop(this.#peek(), this.#unclosed())
        return { kind: 'group', of, at, end: close.end }
      }
    }
    throw this.#stop(token, this.#noAtom(token))
  }

  #noAtom(token: FormulaToken): CoreReason {
    if (token.kind === 'end') return reason('formula.breaks-off')
    const expected = ['*', '/', '^', ')', ','].includes(token.text)
    return expected ? reason('formula.value-missing') : this.#noPart(token)
  }

  #unclosed(): CoreReason {
    return this.#peek().kind === 'end' ? reason('formula.bracket-not-closed') : this.#afterWhole()
  }

  #call({ text: name, at }: FormulaToken): FormulaNode {
    const does = Object.hasOwn(FORMULA_FUNCTIONS, name) ? FORMULA_FUNCTIONS[name] : undefined
    if (does === undefined) {
      throw this.#stop({ at }, reason('formula.no-such-function', { name, functions: FUNCTION_NAMES }))
    }
    this.#take()
    const args: FormulaNode[] = []
    let close = this.#accept(')')
    while (close === undefined) {
      args.push(this.#deeper(() => this.#sum()))
      close = this.#accept(')')
      if (close === undefined && !this.#accept(',')) throw this.#stop(this.#peek(), this.#unclosed())
    }
    const { least, most } = does.arguments
    if (args.length < least || args.length > most) {
      throw this.#stop({ at }, reason('formula.number-of-values', { name, least, most, given: args.length }))
    }
    return { kind: 'call', name, args, at, end: close.end }
  }

  #quantity({ text, at, end }: FormulaToken): FormulaNode {
    const marks = marksOf(text)
    try {
      return marks === 'angle'
        ? { kind: 'quantity', value: angleInRadians(parseAngle(text)), units: ANGLE, marks, at, end }
        : { kind: 'quantity', value: lengthIn(parseLength(text), 'mm'), units: LENGTH, marks, at, end }
    } catch (error) {
      if (error instanceof NotationError) throw this.#stop({ at: at + error.at }, error.advice)
      throw error
    }
  }
}

const isPlainNumber = (node: FormulaNode): boolean =>
  node.kind === 'number' || (node.kind === 'negative' && isPlainNumber(node.of))

/**
 * Reads a formula into a tree.
 * @throws FormulaError with the place where reading stopped
 */
export const parseTree = (text: string): FormulaNode => new Reader(text).whole()
