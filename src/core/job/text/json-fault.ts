/** Where a text stops being JSON (RFC 8259), and what should stand there. `at` counts UTF-16 code units from 0. */
export interface JsonFault {
  at: number
  expected: string
}

const WHITE = /[ \t\n\r]*/y
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const WORD = /true|false|null/y
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

function matchAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at
  return pattern.exec(text)?.[0].length ?? 0
}

/** The end of the string that opens at `at`, or where it goes wrong. */
function stringEnd(text: string, at: number): number | JsonFault {
  let i = at + 1
  while (i < text.length) {
    const code = text.charCodeAt(i)
    if (code === 0x22) return i + 1
    if (code < 0x20) return { at: i, expected: 'the rest of a text in quotes, on one line' }
    if (code !== 0x5c) i++
    else {
      const length = matchAt(ESCAPE, text, i)
      if (length === 0) return { at: i, expected: String.raw`an escape such as \" or \\ or \n` }
      i += length
    }
  }
  return { at: text.length, expected: `the closing quote of the text opened on line ${lineOf(text, at)}` }
}

function lineOf(text: string, at: number): number {
  return text.slice(0, at).split('\n').length
}

type State = 'value' | 'first element' | 'first name' | 'name' | 'colon' | 'after'

/**
 * Finds where a text stops being JSON, for the engine's own parser does not always say.
 * Takes any depth of nesting; null when the text is JSON.
 */
export function findJsonFault(text: string): JsonFault | null {
  const open: { bracket: string; at: number }[] = []
  let state: State = 'value'
  let at = 0
  while (true) {
    at += matchAt(WHITE, text, at)
    const inside = open.at(-1)
    const next = text[at]
    if (state === 'after' && inside === undefined) {
      return next === undefined ? null : { at, expected: 'nothing more' }
    }
    if (next === undefined && inside !== undefined) {
      const closing = inside.bracket === '{' ? '}' : ']'
      return {
        at,
        expected: `the ${closing} that closes the ${inside.bracket} on line ${lineOf(text, inside.at)}`,
      }
    }
    switch (state) {
      case 'first name':
      case 'name': {
        if (next === '}' && state === 'first name') {
          open.pop()
          state = 'after'
          at++
          break
        }
        if (next !== '"') return { at, expected: 'the name of a field, in double quotes' }
        const end = stringEnd(text, at)
        if (typeof end !== 'number') return end
        at = end
        state = 'colon'
        break
      }
      case 'colon':
        if (next !== ':') return { at, expected: 'a colon' }
        at++
        state = 'value'
        break
      case 'after': {
        const closing = inside?.bracket === '{' ? '}' : ']'
        if (next === closing) open.pop()
        else if (next !== ',') return { at, expected: `a comma or ${closing}` }
        else state = inside?.bracket === '{' ? 'name' : 'value'
        at++
        break
      }
      default: {
        if (next === ']' && state === 'first element') {
          open.pop()
          state = 'after'
          at++
          break
        }
        if (next === '{' || next === '[') {
          open.push({ bracket: next, at })
          state = next === '{' ? 'first name' : 'first element'
          at++
          break
        }
        const end = next === '"' ? stringEnd(text, at) : at + scalarLength(text, at)
        if (typeof end !== 'number') return end
        if (end === at) return { at, expected: 'a value' }
        at = end
        state = 'after'
      }
    }
  }
}

function scalarLength(text: string, at: number): number {
  return matchAt(NUMBER, text, at) || matchAt(WORD, text, at)
}
