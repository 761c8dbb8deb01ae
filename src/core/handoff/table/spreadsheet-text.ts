const FORMULA_START = /^[=+\-@\t\r]/
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
