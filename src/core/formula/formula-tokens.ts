/** One sign of a formula. */
export interface FormulaToken {
  /** `quantity`: a number with the marks of the shop, as in `2'-3 1/2"` or `47° 30'`. */
  readonly kind: 'number' | 'quantity' | 'name' | 'sign' | 'end'
  /** Where it starts and ends, UTF-16 code units. */
  readonly at: number
  readonly end: number
  /** As it is written; of a sign, the one that it stands for. */
  readonly text: string
}

const FRACTION = String.raw`\d+\s*[/⁄]\s*\d+`
const VULGAR = '[¼½¾⅐-⅞]'
const SIZE = String.raw`(?:\d+\s+${FRACTION}|${FRACTION}|\d+\s*${VULGAR}|${VULGAR}|\d+\.\d+|\.\d+|\d+)`
const FOOT = "['’‘′´]"
const INCH = `(?:["”“″]|${FOOT}{2})`
const DASH = '[-‐‑‒–—−]'
/** Feet and inches are one quantity with their dash close between them, or with a gap instead of it. */
const FEET_AND_INCHES = String.raw`\d+\s*${FOOT}(?!${FOOT})(?:${DASH}|\s*)${SIZE}\s*${INCH}`
const MINUTES = String.raw`\s*\d+(?:\.\d+)?\s*${FOOT}(?!${FOOT})(?:\s*\d+(?:\.\d+)?\s*${INCH})?`
const ANGLE = String.raw`${SIZE}\s*[°º˚](?:${MINUTES})?`

const QUANTITY = new RegExp(
  `(?:${ANGLE}|${FEET_AND_INCHES}|${SIZE}\\s*${INCH}|${SIZE}\\s*${FOOT}(?!${FOOT}))`,
  'uy',
)
const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/uy
const NAME = /[\p{L}_$][\p{L}\p{N}_$]*/uy
/** The old mark of millimetres after a number, and no metre by metre. */
const MILLIMETRES = /m\/m(?![\p{L}\p{N}_$])/iuy
const SPACE = /(?:\s|#[^\n]*)+/uy

/** Signs that stand for one of those of formulas. */
const SAME: Readonly<Record<string, string>> = { '−': '-', '–': '-', '×': '*', '·': '*', '÷': '/', '∕': '/' }

function matchAt(form: RegExp, text: string, at: number): string | undefined {
  form.lastIndex = at
  return form.exec(text)?.[0]
}

/** The signs of a formula in order, the end among them; all that stands in it is in one of them but gaps and remarks. */
export function formulaTokens(text: string): FormulaToken[] {
  const tokens: FormulaToken[] = []
  const put = (kind: FormulaToken['kind'], at: number, written: string): number => {
    const sign = kind === 'sign' ? (SAME[written] ?? written) : written
    tokens.push({ kind, at, end: at + written.length, text: sign })
    return at + written.length
  }
  for (let at = 0; at < text.length; ) {
    const gap = matchAt(SPACE, text, at)
    if (gap !== undefined) {
      at += gap.length
      continue
    }
    const mark = tokens.at(-1)?.kind === 'number' ? matchAt(MILLIMETRES, text, at) : undefined
    if (mark !== undefined) {
      tokens.push({ kind: 'name', at, end: at + mark.length, text: 'mm' })
      at += mark.length
      continue
    }
    const quantity = matchAt(QUANTITY, text, at)
    const number = quantity === undefined ? matchAt(NUMBER, text, at) : undefined
    const name = quantity === undefined && number === undefined ? matchAt(NAME, text, at) : undefined
    if (quantity !== undefined) at = put('quantity', at, quantity)
    else if (number !== undefined) at = put('number', at, number)
    else if (name !== undefined) at = put('name', at, name)
    else at = put('sign', at, String.fromCodePoint(text.codePointAt(at) ?? 0))
  }
  put('end', text.length, '')
  return tokens
}
