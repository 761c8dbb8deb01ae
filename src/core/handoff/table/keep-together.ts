const NO_BREAK = '\u00a0'

/** Spaces at which a line must not end. */
const BOUND: readonly RegExp[] = [
  // A symbol and its number: `(u 0.020, w −10.5)`, `p below 0.001`, `E_n 7.0`.
  /(?<=(?<![\p{L}\d_])(?:u|U|w|p|E_n|chi-square)) (?=(?:(?:below|over) )?[−-]?[\d.])/gu,
  /(?<=(?<![\p{L}\d_])(?:p|E_n)\s(?:below|over)) (?=\d)/gu,
  // A number and its unit: `0.7 %`, `0.013454 in/px`, `12.5 sq in`.
  /(?<=\d) (?=(?:%|°|(?:in|mm|px)(?:\/px)?|mm²|sq in|dpi)(?![\p{L}\d_]))/gu,
  /(?<=\d\ssq) (?=in(?![\p{L}\d_]))/gu,
  // A size and what belongs to it: `3 1/8"`, `3.118" ± 0.064"`.
  /(?<=\d) (?=\d+\/\d)/gu,
  /(?<=[\d"°²]|mm|sq\sin) (?=[−±+] [\d.]+(?:["°]|\s(?:mm|sq)))/gu,
  /(?<=(?:["°²]|mm|in|\d)\u00a0[−±+]) (?=[\d.])/gu,
]

/** A text with no-break spaces inside quantities, so that no line ends between a number and its unit or symbol. */
export const keepTogether = (text: string): string =>
  BOUND.reduce((bound, space) => bound.replace(space, NO_BREAK), text)

/** The no-break spaces as plain ones again, for a line that is laid. */
export const plainSpaces = (line: string): string => line.replaceAll(NO_BREAK, ' ')
