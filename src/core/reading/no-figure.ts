/** Nothing but digits and the signs of plain sizes: of these alone it can be told at a glance. */
const PLAIN = /^[\d /.'"ØR-]*$/

// One pass over a text, of which there are tens of thousands.
function anyOf(shapes: readonly RegExp[]): RegExp {
  return new RegExp(shapes.map(({ source }) => source).join('|'))
}

/** However a text goes on that begins with one of these, no figure can be understood in it. */
const NEVER_BEGINS = anyOf([
  // A sign that something must stand before, at the beginning.
  /^ *[/'"-]/,
  // Two bars, or a bar with no digit before or after it.
  /\/[^\d.-]*\/|[^\d ] *\/|\/ *['"]/,
  // Two numbers of which the second is neither an upper number nor followed by a mark.
  /\d +\d+ +\d+|\d +\d+ *['".]/,
  // Marks of inches before those of feet, and two of one kind.
  /"[ -]*\d+ *'|'.*'|".*"/,
  // What the size is of after a bar, or said twice.
  /\/ *[ØR]|[ØR].*[ØR]/,
])

/** Nor in one that is this and no more. */
const NEVER_IS = anyOf([
  // An end that something must follow, or what the size is of amid it.
  /[/-] *$|\d +\d+ *$|[\d'"] *[ØR] *[\d/'"-]/,
  // A dash before a dash, or between whole numbers; a point before no digit, but that of R.
  /- *-|\d *- *\d+ *(?:['"ØR]|$)|(?<!R)\.(?!\d)/,
  // A number after inches.
  /" *[\d.]/,
])

/** Inches after feet that are a foot and more. */
const TOO_MANY_INCHES = /' *-? *(?:1[2-9]|[2-9]\d|0*[1-9]\d{2,})(?![\d/]| *\/)/

const FRACTION = /(?<![\d.])(\d+) ?\/ ?(\d+)(?![\d.])/g

// What a size is of may stand before it.
const sizeIn = (text: string): string =>
  text.startsWith('Ø') || text.startsWith('R') ? text.replace(/^(?:Ø|R\.?) ?(?=.)/, '') : text

// Two single quotes are an inch mark.
const withOneQuote = (text: string): string => (text.includes("''") ? text.replaceAll("''", '"') : text)

/**
 * Whether no figure begins so, by its looks: only so as to spare the reading of what cannot be read. What it lets pass may
 * still be none.
 */
export function beginsNoFigure(begun: string): boolean {
  const beginning = sizeIn(begun)
  if (!PLAIN.test(beginning)) return false
  // A single quote at the end may yet become one half of an inch mark.
  const text = withOneQuote(beginning.endsWith("'") ? beginning.slice(0, -1) : beginning)
  return NEVER_BEGINS.test(text)
}

/** The same of a text that is whole. */
export function isNoFigure(whole: string): boolean {
  const written = sizeIn(whole)
  if (!PLAIN.test(written)) return false
  const text = withOneQuote(written)
  if (!/\d/.test(text) || NEVER_BEGINS.test(text) || NEVER_IS.test(text) || TOO_MANY_INCHES.test(text))
    return true
  // Of whole numbers the upper is the lesser: only decimals stand over one another as limits.
  for (const [, upper, lower] of text.matchAll(FRACTION)) if (Number(upper) >= Number(lower)) return true
  return false
}
