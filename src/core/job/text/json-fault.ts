import { printParseErrorCode, visit } from 'jsonc-parser'

/** Where a text stops being JSON (RFC 8259), and what should stand there. `at` counts UTF-16 code units from 0. */
export interface JsonFault {
  at: number
  expected: string
}

/** Faults inside a symbol; the next fault of the grammar says what should have stood there. */
const INSIDE_A_SYMBOL: ReadonlySet<string> = new Set([
  'InvalidSymbol',
  'InvalidNumberFormat',
  'UnexpectedEndOfNumber',
  'InvalidCommentToken',
  'UnexpectedEndOfComment',
])

const GOOD_ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

const lineOf = (text: string, at: number): number => text.slice(0, at).split('\n').length

/** What is wrong with the text in quotes that opens at `opened`. */
function faultInQuotes(text: string, opened: number): JsonFault {
  let at = opened + 1
  while (at < text.length && text[at] !== '"') {
    if (text.charCodeAt(at) < 0x20) return { at, expected: 'the rest of a text in quotes, on one line' }
    if (text[at] !== '\\') at++
    else {
      GOOD_ESCAPE.lastIndex = at
      const good = GOOD_ESCAPE.exec(text)
      if (good === null) return { at, expected: String.raw`an escape such as \" or \\ or \n` }
      at += good[0].length
    }
  }
  return { at, expected: `the closing quote of the text opened on line ${lineOf(text, opened)}` }
}

/** An opening bracket and where it stands. */
interface Opening {
  readonly bracket: '{' | '['
  readonly at: number
}

const closingOf = (opening: Opening | undefined): string => (opening?.bracket === '{' ? '}' : ']')

function inWords(error: string, text: string, inside: Opening | undefined): string {
  switch (error) {
    case 'PropertyNameExpected':
      return 'the name of a field, in double quotes'
    case 'ColonExpected':
      return 'a colon'
    case 'CommaExpected':
      return `a comma or ${closingOf(inside)}`
    case 'EndOfFileExpected':
      return 'nothing more'
    case 'CloseBraceExpected':
    case 'CloseBracketExpected':
      return `the ${closingOf(inside)} that closes the ${inside?.bracket} on line ${lineOf(text, inside?.at ?? 0)}`
    default:
      return 'a value'
  }
}

/**
 * Finds where a text stops being JSON, for the engine's own parser does not always say; null when the text is JSON.
 * @throws RangeError where it is nested too deep to be gone through
 */
export function findJsonFault(text: string): JsonFault | null {
  const open: Opening[] = []
  // Where a closing bracket is missing, the parser tells of one without length.
  const close = (_: number, length: number): void => {
    if (length > 0) open.pop()
  }
  let first: { error: string; at: number } | undefined
  let fault: JsonFault | undefined
  visit(
    text,
    {
      onObjectBegin: (at) => {
        open.push({ bracket: '{', at })
      },
      onArrayBegin: (at) => {
        open.push({ bracket: '[', at })
      },
      onObjectEnd: close,
      onArrayEnd: close,
      onError: (code, at) => {
        const error = printParseErrorCode(code)
        if (fault !== undefined) return
        first ??= { error, at }
        if (!INSIDE_A_SYMBOL.has(error)) fault = { at: first.at, expected: inWords(error, text, open.at(-1)) }
      },
    },
    { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false },
  )
  if (first === undefined) return null
  if (text[first.at] === '"' && isInQuotes(first.error)) return faultInQuotes(text, first.at)
  return fault ?? { at: first.at, expected: 'a value' }
}

const isInQuotes = (error: string): boolean =>
  error === 'InvalidCharacter' ||
  error === 'InvalidEscapeCharacter' ||
  error === 'InvalidUnicode' ||
  error === 'UnexpectedEndOfString'
