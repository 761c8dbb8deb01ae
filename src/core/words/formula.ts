import { excerpt, shownAt } from './excerpt.ts'
import type { AnyReason, Say } from './reason.ts'

/** What a part of a formula may be within what it is uncertain by. */
const AT_ITS_EDGE = {
  divisor: (part: string) => `it divides by ${part}, which can't be told from 0`,
  root: (part: string) => `${part}, of which it takes a root, may be less than 0`,
  sine: (part: string) => `${part} is taken for a sine or a cosine and may be beyond 1, which neither can be`,
  tangent: (part: string) => `it takes the tangent of ${part}, which can't be told from a right angle`,
}

/** What may be wrong with a formula, and with a value that is worked out by one. */
export const FORMULA_WORDS = {
  // Reading: goes on from a place or a name, without a stop
  'formula.empty': () => 'the formula is empty',
  'formula.too-long': (p: { length: number; longest: number }) =>
    `a formula of ${p.length} characters is too long to read; divide it into several of at most ${p.longest}`,
  'formula.stopped': (p: { text: string; at: number; problem: AnyReason }, say: Say) =>
    `the formula \`${excerpt(p.text, p.at)}\` can't be read ${
      p.at >= p.text.length ? 'at its end' : `at character ${p.at + 1}, “${shownAt(p.text, p.at)}”`
    }: ${say(p.problem)}`,
  'formula.breaks-off': () => 'it breaks off; write what is to follow',
  'formula.value-missing': () => 'a value is missing before this; write a number with its unit, or a name',
  'formula.nothing-between': (p: { word: string }) =>
    `nothing says what \`${p.word}\` does there; write + - * or / between it and what stands before it`,
  'formula.two-numbers': (p: { first: string }) =>
    `two numbers stand side by side after \`${p.first}\`; mark the inches or feet, as in 2 3/8", or write a sign between them`,
  'formula.feet-or-less': (p: { feet: string; inches: string }) =>
    `this may be feet and inches, or inches less than feet; write ${p.feet}-${p.inches} without gaps, or (${p.feet}) - ${p.inches}`,
  'formula.bracket-not-closed': () => 'a bracket is not closed; write ) where it ends',
  'formula.bracket-not-opened': () => 'this bracket closes none; take it away, or write ( where it begins',
  'formula.stray-comma': () =>
    'a comma stands between the values of a function only; write decimals with a point',
  'formula.number-too-large': () => 'no dimension is as large as this number; write it shorter',
  'formula.too-deep': () => 'too many brackets stand within one another; divide it into several formulas',
  'formula.no-part-of-formulas': (p: { expression: string; functions: readonly string[] }) =>
    `\`${p.expression}\` is not part of formulas here; use + - * / ^, brackets, numbers with units, dimension names and ${p.functions.join(', ')}`,
  'formula.no-such-function': (p: { name: string; functions: readonly string[] }) =>
    `there is no function \`${p.name}\`; there are ${p.functions.join(', ')}`,
  'formula.function-without-value': (p: { name: string }) =>
    `${p.name} needs what it is of in brackets, as in ${p.name}(2)`,
  'formula.number-of-values': (p: { name: string; least: number; most: number; given: number }) =>
    `${p.name} takes ${p.least === p.most ? p.least : `${p.least} or more`} value${p.most > 1 ? 's' : ''}, not ${p.given}`,
  'formula.relation-without-sides': (p: { text: string }) =>
    `the relation \`${p.text}\` must have two sides with one = between them, as in overall = neck + drum`,

  // Units
  'formula.mixes-units': (p: { expression: string; left: string; with: 'plus' | 'minus'; right: string }) =>
    `\`${p.expression}\` mixes units: ${p.left} ${p.with} ${p.right}; add up only what is of one kind`,
  'formula.number-without-unit': (p: {
    expression: string
    left: string
    with: 'plus' | 'minus'
    right: string
    number: string
    wanted: 'length' | 'angle'
  }) =>
    `\`${p.expression}\` mixes units: ${p.left} ${p.with} ${p.right}; write the unit of ${p.number}, as in ${
      p.wanted === 'length' ? `${p.number}" or ${p.number} mm` : `${p.number}° or ${p.number} rad`
    }`,
  'formula.exponent-with-units': (p: { expression: string; exponent: string }) =>
    `\`${p.expression}\` has ${p.exponent} for an exponent; write a plain number there`,
  'formula.exponent-is-a-dimension': (p: { name: string }) =>
    `the exponent of a length must be a number, not the dimension ${p.name}`,
  'formula.needs-an-angle': (p: { name: string; given: string }) =>
    `${p.name} needs an angle, not ${p.given}: write a named angle, or a number with deg or rad`,
  'formula.needs-a-number': (p: { name: string; given: string }) =>
    `${p.name} needs a plain number such as a ratio, not ${p.given}`,
  'formula.values-mix-units': (p: { name: string; first: string; other: string }) =>
    `${p.name} mixes units: ${p.first} and ${p.other}; give it only what is of one kind`,

  // Values: whole sentences
  'formula.part-at-its-edge': (p: {
    formula: string
    edge: 'divisor' | 'root' | 'sine' | 'tangent'
    part: string
    names: readonly string[]
  }) =>
    `The formula \`${p.formula}\` has no sure value: ${AT_ITS_EDGE[p.edge](`\`${p.part}\``)}. Measure ${p.names.join(' and ')} more closely, or work the dimension out another way.`,
  'formula.mostly-without-value': (p: { formula: string }) =>
    `The formula \`${p.formula}\` has no sure value: within what its dimensions are uncertain by it may have none. Measure these more closely, or work the dimension out another way.`,
  /** names: each followed by one that it uses, the last is the first again. */
  'formula.circle': (p: { names: readonly string[] }) =>
    p.names.length > 2
      ? `${p.names[0]} refers to itself by way of ${p.names.slice(1, -1).join(', then ')}.`
      : `${p.names[0]} refers to itself.`,
  'formula.without-value': (p: { formula: string }) =>
    `The formula \`${p.formula}\` has no value for these dimensions.`,
  'formula.below-nothing': (p: { formula: string }) =>
    `The formula \`${p.formula}\` gives less than 0: check the dimensions it uses.`,
  'formula.without-uncertainty': (p: { formula: string }) =>
    `The formula \`${p.formula}\` has no uncertainty at these dimensions: the least change of them leaves it without a value, or changes it without bound.`,
} as const
