/** Nothing but digits and the signs of plain sizes: of these alone it can be told at a glance. */
const PLAIN = /^[\d /.'"-]*$/

/** However a text goes on that begins with one of these, no figure can be understood in it. */
const NEVER_BEGINS = [
  // A sign that something must stand before, at the beginning.
  /^ *[/'"-]/,
  // Two bars, or a bar with no digit before or after it.
  /\/[^\d.-]*\/|[^\d ] *\/|\/ *['"]/,
  // Two numbers of which the second is neither an upper number nor followed by a mark.
  /\d +\d+ +\d+|\d +\d+ *['".]/,
  // Marks of inches before those of feet, and two of one kind.
  /"[ -]*\d+ *'|'.*'|".*"/,
]

/** Nor in one that is this and no more. */
const NEVER_IS = /[/-] *$|\d +\d+ *$/

const FRACTION = /(?<![\d.])(\d+) ?\/ ?(\d+)(?![\d.])/g

// Two single quotes are an inch mark.
const withOneQuote = (text: string): string => text.replaceAll("''", '"')

/**
 * Whether no figure begins so, by its looks: only so as to spare the reading of what cannot be read. What it lets pass may
 * still be none.
 */
export function beginsNoFigure(beginning: string): boolean {
  if (!PLAIN.test(beginning)) return false
  // A single quote at the end may yet become one half of an inch mark.
  const text = withOneQuote(beginning.endsWith("'") ? beginning.slice(0, -1) : beginning)
  return NEVER_BEGINS.some((shape) => shape.test(text))
}

/** The same of a text that is whole. */
export function isNoFigure(written: string): boolean {
  if (!PLAIN.test(written)) return false
  const text = withOneQuote(written)
  if (!/\d/.test(text) || NEVER_IS.test(text) || NEVER_BEGINS.some((shape) => shape.test(text))) return true
  // Of whole numbers the upper is the lesser: only decimals stand over one another as limits.
  for (const [, upper, lower] of text.matchAll(FRACTION)) if (Number(upper) >= Number(lower)) return true
  return false
}
