/** What may be wrong with a formula, and with a value that is worked out by one. */
export const FORMULA_WORDS = {
  // Reading: goes on from a place or a name, without a stop
  'formula.empty': () => 'the formula is empty',
  'formula.too-long': (p: { length: number; longest: number }) =>
    `a formula of ${p.length} characters is too long to read; divide it into several of at most ${p.longest}`,
  'formula.unreadable': (p: { text: string; why: string }) =>
    `the formula \`${p.text}\` can't be read: ${p.why}`,
  'formula.no-part-of-formulas': (p: { expression: string; functions: readonly string[] }) =>
    `\`${p.expression}\` is not part of formulas here; use + - * / ^, brackets, numbers with units, dimension names and ${p.functions.join(', ')}`,
  'formula.no-such-function': (p: { name: string; functions: readonly string[] }) =>
    `there is no function \`${p.name}\`; there are ${p.functions.join(', ')}`,
  'formula.number-of-values': (p: { name: string; least: number; most: number; given: number }) =>
    `${p.name} takes ${p.least === p.most ? p.least : `${p.least} or more`} value${p.most > 1 ? 's' : ''}, not ${p.given}`,
  'formula.relation-without-sides': (p: { text: string }) =>
    `the relation \`${p.text}\` must have two sides with one = between them`,

  // Units
  'formula.mixes-units': (p: { expression: string; left: string; with: 'plus' | 'minus'; right: string }) =>
    `\`${p.expression}\` mixes units: ${p.left} ${p.with} ${p.right}`,
  'formula.exponent-with-units': (p: { expression: string; exponent: string }) =>
    `\`${p.expression}\` has ${p.exponent} for an exponent`,
  'formula.exponent-is-a-dimension': (p: { name: string }) =>
    `the exponent of a length must be a number, not the dimension ${p.name}`,
  'formula.needs-an-angle': (p: { name: string; given: string }) =>
    `${p.name} needs an angle, not ${p.given}: write a named angle, or a number with deg or rad`,
  'formula.needs-a-number': (p: { name: string; given: string }) =>
    `${p.name} needs a plain number such as a ratio, not ${p.given}`,
  'formula.values-mix-units': (p: { name: string; first: string; other: string }) =>
    `${p.name} mixes units: ${p.first} and ${p.other}`,

  // Values: whole sentences
  'formula.circle': (p: { names: readonly string[] }) =>
    `The formulas run in a circle: ${p.names.join(' uses ')}.`,
  'formula.without-value': (p: { formula: string }) =>
    `The formula \`${p.formula}\` has no value for these dimensions.`,
  'formula.below-nothing': (p: { formula: string }) =>
    `The formula \`${p.formula}\` gives less than nothing: check the dimensions it uses.`,
  'formula.without-uncertainty': (p: { formula: string }) =>
    `The formula \`${p.formula}\` has no uncertainty at these dimensions: the least change of them leaves it without a value, or changes it without bound.`,
} as const
