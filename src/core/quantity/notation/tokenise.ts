import { reason } from '../../words/core-words.ts'
import { NotationError } from './notation-error.ts'

export type TokenKind =
  | 'number'
  | 'vulgar'
  | 'slash'
  | 'dash'
  | 'plus'
  | 'plus-minus'
  | 'foot'
  | 'inch'
  | 'degree'
  | 'diameter'
  | 'number-sign'
  | 'word'
  | 'newline'
  | 'bar'
  | 'other'
  | 'end'

/** One sign of a written quantity. Foot and inch marks also serve as minutes and seconds of arc. */
export interface Token {
  readonly kind: TokenKind
  /** Where it starts and ends in the text, UTF-16 code units. */
  readonly at: number
  readonly end: number
  /** Whether a space stands before it. */
  readonly spaced: boolean
  /** Numbers: the digits without their point. Words: lower case without full stops. Others: as written. */
  readonly text: string
  /** Numbers: digits after the point, 0 for an integer. */
  readonly places: number
  /** Numbers: whether a comma stands for the point. */
  readonly comma?: true
}

/** More digits than any drawing needs; the limit keeps hostile input cheap. */
const MOST_DIGITS = 20

const CHARACTERS: readonly (readonly [TokenKind, string])[] = [
  ['slash', '/\u2044\u2215'],
  ['dash', '-\u2010\u2011\u2012\u2013\u2014\u2015\u2212\uFE63\uFF0D'],
  ['plus', '+'],
  ['plus-minus', '±'],
  ['foot', "'\u2019\u2018\u2032\u00B4\u02B9\u02BC`"],
  ['inch', '"\u201D\u201C\u2033\u02BA'],
  ['degree', '°\u00BA\u02DA'],
  ['diameter', 'Øø\u2300\u2205\u03A6\u03C6'],
  ['number-sign', '#№'],
  ['newline', '\n\r\u2028\u2029'],
  ['bar', '_'],
  ['vulgar', '¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'],
]

const SINGLE: ReadonlyMap<string, TokenKind> = new Map(
  CHARACTERS.flatMap(([kind, characters]) => [...characters].map((character) => [character, kind] as const)),
)

const SPACES = new Set(
  ' \t\v\f\u00A0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200A\u202F\u205F\u3000',
)

const isDigit = (code: number): boolean => code >= 48 && code <= 57
const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 0xb5 || code === 0x3bc
const STOP = 46
const COMMA = 44

function endOfDigits(text: string, from: number): number {
  let i = from
  while (isDigit(text.charCodeAt(i))) i += 1
  return i
}

/** A number whose thousands are parted and whose decimals have the other of point and comma: `1,234.5`, `1.234,5`. */
const PARTED = /(?:\d{1,3}(?:,\d{3})+(\.)\d+|\d{1,3}(?:\.\d{3})+(,)\d+)(?![\d.,])/y
/** A number with a comma for its point. Three digits after it may be thousands, unless a nought stands before it. */
const COMMAED = /(\d+),(\d+)(?![\d,]|\.\d)/y

function matchAt(form: RegExp, text: string, at: number): RegExpExecArray | null {
  form.lastIndex = at
  return form.exec(text)
}

/** A number with commas in it; undefined where none stands. */
function commaedToken(text: string, at: number, spaced: boolean): Token | undefined {
  const parted = matchAt(PARTED, text, at)
  if (parted !== null) {
    const point = parted[1] ?? parted[2] ?? '.'
    const [whole = '', parts = ''] = parted[0].split(point)
    const digits = whole.replace(/[.,]/g, '') + parts
    const comma = point === ',' ? ({ comma: true } as const) : {}
    return sound(text, {
      kind: 'number',
      at,
      end: at + parted[0].length,
      spaced,
      text: digits,
      places: parts.length,
      ...comma,
    })
  }
  const [all, whole = '', parts = ''] = matchAt(COMMAED, text, at) ?? []
  if (all === undefined) return undefined
  if (parts.length === 3 && !/^0+$/.test(whole)) {
    const either = { whole: `${whole}${parts}`, decimal: `${whole}.${parts}` }
    throw new NotationError(text, at + whole.length, reason('notation.comma-of-thousands', either))
  }
  const end = at + all.length
  return sound(text, {
    kind: 'number',
    at,
    end,
    spaced,
    text: whole + parts,
    places: parts.length,
    comma: true,
  })
}

function sound(text: string, token: Token): Token {
  if (token.text.length <= MOST_DIGITS) return token
  throw new NotationError(text, token.at, reason('notation.too-many-digits', { most: MOST_DIGITS }))
}

function numberToken(text: string, at: number, spaced: boolean): Token {
  const whole = endOfDigits(text, at)
  const pointed = text.charCodeAt(whole) === STOP && isDigit(text.charCodeAt(whole + 1))
  const end = pointed ? endOfDigits(text, whole + 1) : whole
  // A point first, so that the ordinary number costs nothing more; `1.234,5` has both.
  if (text.charCodeAt(end) === COMMA && isDigit(text.charCodeAt(end + 1))) {
    const token = commaedToken(text, at, spaced)
    if (token !== undefined) return token
  }
  const digits = pointed ? text.slice(at, whole) + text.slice(whole + 1, end) : text.slice(at, whole)
  return sound(text, {
    kind: 'number',
    at,
    end,
    spaced,
    text: digits,
    places: pointed ? end - whole - 1 : 0,
  })
}

/** Letters with the full stops of an abbreviation: `ft.`, `C.C.`, `B.W.G.` */
function wordToken(text: string, at: number, spaced: boolean): Token {
  let end = at
  let letters = ''
  for (;;) {
    const from = end
    while (isLetter(text.charCodeAt(end))) end += 1
    letters += text.slice(from, end)
    if (text.charCodeAt(end) !== STOP) break
    const after = text.charCodeAt(end + 1)
    if (isDigit(after)) {
      // A sheet-gauge number is whole, so the stop in `No.16` can only belong to `No.`
      if (letters.length === 2 && letters.toLowerCase() === 'no') {
        end += 1
        break
      }
      const ambiguous = reason('notation.ambiguous-stop', { letters: text.slice(at, end) })
      throw new NotationError(text, end, ambiguous)
    }
    end += 1
    if (!isLetter(after)) break
  }
  return { kind: 'word', at, end, spaced, text: letters.toLowerCase(), places: 0 }
}

function signToken(text: string, at: number, spaced: boolean): Token {
  const character = String.fromCodePoint(text.codePointAt(at) ?? 0)
  let kind = SINGLE.get(character) ?? 'other'
  let end = at + character.length
  const next = SINGLE.get(text.charAt(end))
  if (kind === 'foot' && next === 'foot') {
    kind = 'inch'
    end += 1
  } else if (kind === 'plus' && next === 'slash' && SINGLE.get(text.charAt(end + 1)) === 'dash') {
    kind = 'plus-minus'
    end += 2
  } else if (kind === 'newline' && character === '\r' && text.charAt(end) === '\n') {
    end += 1
  } else if (kind === 'bar') {
    while (text.charAt(end) === '_') end += 1
  }
  return { kind, at, end, spaced, text: text.slice(at, end), places: 0 }
}

/** A line end says something only between figures, where it may be the bar of a stacked fraction. */
function withoutIdleLineEnds(tokens: Token[]): Token[] {
  return tokens.filter((token, i) => {
    if (token.kind !== 'newline') return true
    const before = tokens[i - 1]?.kind ?? 'end'
    const after = tokens[i + 1]?.kind ?? 'end'
    const idle = (kind: TokenKind): boolean => kind === 'word' || kind === 'end' || kind === 'newline'
    return !idle(before) && !idle(after)
  })
}

/**
 * The signs of a written quantity, in order, ending with one of kind 'end'.
 *
 * @throws NotationError for a number too long to be one, or a full stop that could be read in two ways
 */
export function tokenise(text: string): Token[] {
  const tokens: Token[] = []
  let spaced = false
  let lines = false
  let i = 0
  while (i < text.length) {
    const code = text.charCodeAt(i)
    if (code === 32 || SPACES.has(text.charAt(i))) {
      spaced = true
      i += 1
      continue
    }
    const token: Token =
      isDigit(code) || (code === STOP && isDigit(text.charCodeAt(i + 1)))
        ? numberToken(text, i, spaced)
        : isLetter(code)
          ? wordToken(text, i, spaced)
          : signToken(text, i, spaced)
    if (token.kind === 'newline') lines = true
    tokens.push(token)
    spaced = token.kind === 'newline'
    i = token.end
  }
  tokens.push({ kind: 'end', at: text.length, end: text.length, spaced, text: '', places: 0 })
  return lines ? withoutIdleLineEnds(tokens) : tokens
}
