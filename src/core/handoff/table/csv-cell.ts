import { plainText } from '../../words/plain-text.ts'

/** What begins a formula: also in the full-width and small forms of East Asian writing, which spreadsheets read alike. */
const FORMULA_START = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20\ufe66\ufe62\ufe63\ufe6b]/u
/** A number that a spreadsheet shows back as it was written, so that nothing is lost when it reads it as one. */
const SAME_AS_NUMBER = /^(?:0|-?[1-9]\d{0,14}|-?(?=[\d.]{1,16}$)(?:0|[1-9]\d*)\.\d*[1-9])$/

const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)'

/** What a spreadsheet reads as a number, a fraction, a date, a time or a truth value. */
const TAKEN_FOR_ELSE: readonly RegExp[] = [
  /^(?=.*\d)[\d\s.,:/%+\-−()$€£]+$/u,
  /^[+\-−]?[\d.,]+e[+\-−]?\d+$/iu,
  /^[\d:.]+\s*[ap]\.?m?\.?$/iu,
  /^\d{4}-\d\d?-\d\d?t[\d:.]+(?:z|[+-][\d:]+)?$/iu,
  new RegExp(`^\\d{1,4}[\\s./-]*${MONTH}(?:[\\s.,/-]*\\d{1,4})?$`, 'iu'),
  new RegExp(`^${MONTH}[\\s.,/-]*\\d{1,4}(?:[\\s.,/-]+\\d{1,4})?$`, 'iu'),
  /^(?:true|false)$/iu,
]

/**
 * A text so that a spreadsheet leaves it as it is: what begins like a formula, or reads like a number, a fraction,
 * a date or a time (a tolerance `1/64` would become a day), gets an apostrophe before it, which spreadsheets read
 * as "this is text". A plain number that comes out as it went in, such as `8` or `-12.5`, is left alone.
 */
export const spreadsheetText = (text: string): string =>
  !SAME_AS_NUMBER.test(text) &&
  (FORMULA_START.test(text) || TAKEN_FOR_ELSE.some((pattern) => pattern.test(text)))
    ? `'${text}`
    : text

/** Beyond these digits there is only the rounding of the arithmetic. */
const DIGITS = 12

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

/**
 * One cell of a CSV file, quoted where it has to be (RFC 4180, section 2, rules 5 to 7): a text on one line as a
 * spreadsheet leaves it, a number to 12 significant digits; empty for none and for what is not finite.
 */
export const csvCell = (content: string | number | null): string =>
  typeof content === 'string' ? quoted(asPlain(content)) : numberCell(content)

const asPlain = (text: string): string => spreadsheetText(plainText(text))

function numberCell(content: number | null): string {
  return content !== null && Number.isFinite(content) ? String(Number(content.toPrecision(DIGITS))) : ''
}

/** The same for cells that tabs part: only what begins with a quotation mark is quoted, as spreadsheets copy it. */
export function tabbedCell(content: string | number | null): string {
  if (typeof content !== 'string') return numberCell(content)
  const text = asPlain(content)
  return text.startsWith('"') ? `"${text.replaceAll('"', '""')}"` : text
}
