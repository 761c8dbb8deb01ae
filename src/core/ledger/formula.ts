import { type FunctionNode, type MathNode, type OperatorNode, parse, type SymbolNode } from 'mathjs/number'
import { add, divide, multiply, power, scale, subtract } from '../uncertainty/arithmetic.ts'
import { exact, type Uncertain } from '../uncertainty/uncertain.ts'
import { FormulaError } from './formula-error.ts'
import { FORMULA_FUNCTIONS, type FormulaFunction } from './formula-functions.ts'
import { ANGLE, LENGTH, NUMBER, sameUnits, type Units, unitsInWords } from './formula-units.ts'

/** Names with a fixed meaning: constants, and units in millimetres and radians. */
const CONSTANTS: Readonly<Record<string, { value: number; units: Units }>> = {
  pi: { value: Math.PI, units: NUMBER },
  tau: { value: 2 * Math.PI, units: NUMBER },
  e: { value: Math.E, units: NUMBER },
  in: { value: 25.4, units: LENGTH },
  inch: { value: 25.4, units: LENGTH },
  ft: { value: 304.8, units: LENGTH },
  mm: { value: 1, units: LENGTH },
  cm: { value: 10, units: LENGTH },
  m: { value: 1000, units: LENGTH },
  deg: { value: Math.PI / 180, units: ANGLE },
  rad: { value: 1, units: ANGLE },
}

/** Names that no dimension may have. */
export const RESERVED_NAMES: ReadonlySet<string> = new Set([
  ...Object.keys(CONSTANTS),
  ...Object.keys(FORMULA_FUNCTIONS),
  // Words of the expression language itself.
  ...['to', 'mod', 'xor', 'and', 'or', 'not', 'true', 'false', 'null', 'undefined', 'NaN', 'Infinity', 'end'],
])

/** A formula over dimension names. */
export interface Formula {
  text: string
  /** Dimension names it uses, each once. */
  names: readonly string[]
  /**
   * Units of the result, given those of each name.
   * @throws FormulaError where units are mixed
   */
  units(of: (name: string) => Units): Units
  /** Value in mm, mm², radians or a plain number, with its uncertainty. */
  value(of: (name: string) => Uncertain): Uncertain
}

// Parsing is slow beside evaluation and a table is computed many times from one text.
const parsed = new Map<string, Formula>()
const MOST_KEPT = 5000

/** Characters; what is longer could exhaust the call stack. */
const LONGEST = 2000

/**
 * Reads a formula such as `pi * (barrel_od - sheet_thickness)`.
 * @throws FormulaError saying what can't be read
 */
export function parseFormula(text: string): Formula {
  const known = parsed.get(text)
  if (known !== undefined) return known
  const node = parseNode(text)
  const names = new Set<string>()
  const formula: Formula = {
    text,
    names: [],
    units: compileUnits(node, names),
    value: compileValue(node),
  }
  const complete = { ...formula, names: [...names] }
  if (parsed.size >= MOST_KEPT) parsed.clear()
  parsed.set(text, complete)
  return complete
}

function parseNode(text: string): MathNode {
  if (text.trim() === '') throw new FormulaError('the formula is empty')
  if (text.length > LONGEST) {
    throw new FormulaError(
      `a formula of ${text.length} characters is too long to read; divide it into several of at most ${LONGEST}`,
    )
  }
  try {
    // The parser takes `in` for its conversion operator, so that `x - 3/8 in` would be `(x - 3/8) in`.
    return parse(text.trim().replace(/([\d.)]\s*)in\b/g, '$1inch'))
  } catch (error) {
    const reason = error instanceof Error ? error.message.replace(/\s+/g, ' ') : 'unknown reason'
    throw new FormulaError(`the formula \`${text}\` can't be read: ${reason}`)
  }
}

type UnitsOf = (of: (name: string) => Units) => Units
type ValueOf = (of: (name: string) => Uncertain) => Uncertain

const refuse = (node: MathNode): never => {
  throw new FormulaError(
    `\`${node.toString()}\` is not part of formulas here; use + - * / ^, brackets, numbers with units, dimension names and ${Object.keys(FORMULA_FUNCTIONS).join(', ')}`,
  )
}

const inner = (node: MathNode): MathNode => (node as MathNode & { content: MathNode }).content

function numberOf(node: MathNode): number {
  const { value } = node as MathNode & { value: unknown }
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse(node)
  return value
}

function functionOf(node: MathNode): { name: string; args: MathNode[]; does: FormulaFunction } {
  const { fn, args } = node as FunctionNode
  // The name of a property, as in `a.sqrt(4)`, is no function.
  if ((fn as MathNode).type !== 'SymbolNode') return refuse(node)
  const name = (fn as SymbolNode).name
  const does = Object.hasOwn(FORMULA_FUNCTIONS, name) ? FORMULA_FUNCTIONS[name] : undefined
  if (does === undefined) {
    throw new FormulaError(
      `there is no function \`${name}\`; there are ${Object.keys(FORMULA_FUNCTIONS).join(', ')}`,
    )
  }
  const { least, most } = does.arguments
  if (args.length < least || args.length > most) {
    throw new FormulaError(
      `${name} takes ${least === most ? least : `${least} or more`} value${most > 1 ? 's' : ''}, not ${args.length}`,
    )
  }
  return { name, args, does }
}

const constantOf = (name: string) => (Object.hasOwn(CONSTANTS, name) ? CONSTANTS[name] : undefined)

function compileUnits(node: MathNode, names: Set<string>): UnitsOf {
  switch (node.type) {
    case 'ConstantNode':
      numberOf(node)
      return () => NUMBER
    case 'ParenthesisNode':
      return compileUnits(inner(node), names)
    case 'SymbolNode': {
      const { name } = node as SymbolNode
      const constant = constantOf(name)
      if (constant !== undefined) return () => constant.units
      names.add(name)
      return (of) => of(name)
    }
    case 'FunctionNode': {
      const { name, args, does } = functionOf(node)
      const parts = args.map((a) => compileUnits(a, names))
      return (of) =>
        does.units(
          name,
          parts.map((p) => p(of)),
        )
    }
    case 'OperatorNode':
      return compileOperatorUnits(node as OperatorNode, names)
    default:
      return refuse(node)
  }
}

function compileOperatorUnits(node: OperatorNode, names: Set<string>): UnitsOf {
  const operands = node.args as MathNode[]
  const [a, b] = operands.map((arg) => compileUnits(arg, names))
  if (a === undefined) return refuse(node)
  if (b === undefined) return node.fn === 'unaryMinus' || node.fn === 'unaryPlus' ? a : refuse(node)
  switch (node.fn as string) {
    case 'add':
    case 'subtract':
      return (of) => {
        const [ua, ub] = [a(of), b(of)]
        if (sameUnits(ua, ub)) return ua
        throw new FormulaError(
          `\`${node.toString()}\` mixes units: ${unitsInWords(ua)} ${node.fn === 'add' ? 'plus' : 'minus'} ${unitsInWords(ub)}`,
        )
      }
    case 'multiply':
      return (of) => plusUnits(a(of), b(of), 1)
    case 'divide':
      return (of) => plusUnits(a(of), b(of), -1)
    case 'pow': {
      const exponent = operands[1] as MathNode
      return (of) => {
        const [ua, ub] = [a(of), b(of)]
        if (!sameUnits(ub, NUMBER)) {
          throw new FormulaError(`\`${node.toString()}\` has ${unitsInWords(ub)} for an exponent`)
        }
        if (sameUnits(ua, NUMBER)) return NUMBER
        const n = constantValue(exponent)
        return { length: ua.length * n, angle: ua.angle * n }
      }
    }
    default:
      return refuse(node)
  }
}

function constantValue(node: MathNode): number {
  const value = compileValue(node)((name) => {
    throw new FormulaError(`the exponent of a length must be a number, not the dimension ${name}`)
  })
  return value.value
}

const plusUnits = (a: Units, b: Units, sign: 1 | -1): Units => ({
  length: a.length + sign * b.length,
  angle: a.angle + sign * b.angle,
})

const BINARY: Readonly<Record<string, (a: Uncertain, b: Uncertain) => Uncertain>> = {
  add,
  subtract,
  multiply,
  divide,
  pow: power,
}

function compileValue(node: MathNode): ValueOf {
  switch (node.type) {
    case 'ConstantNode': {
      const value = exact(numberOf(node))
      return () => value
    }
    case 'ParenthesisNode':
      return compileValue(inner(node))
    case 'SymbolNode': {
      const { name } = node as SymbolNode
      const constant = constantOf(name)
      if (constant === undefined) return (of) => of(name)
      const value = exact(constant.value)
      return () => value
    }
    case 'FunctionNode': {
      const { args, does } = functionOf(node)
      const parts = args.map(compileValue)
      return (of) => does.value(parts.map((p) => p(of)))
    }
    case 'OperatorNode': {
      const { fn, args } = node as OperatorNode
      const [a, b] = (args as MathNode[]).map(compileValue)
      if (a === undefined) return refuse(node)
      if (b === undefined) return fn === 'unaryMinus' ? (of) => scale(a(of), -1) : a
      const combine = BINARY[fn as string]
      return combine === undefined ? refuse(node) : (of) => combine(a(of), b(of))
    }
    default:
      return refuse(node)
  }
}
