const SHOWN = 60

const onOneLine = (text: string): string => text.replace(/\r\n|[\r\n]/g, ' ⏎ ')

/** The word, number or single character that starts at `at`, as a person would point at it. */
export function shownAt(text: string, at: number): string {
  const run = /^(?:\p{L}+|\.?\p{N}+)/u.exec(text.slice(at, at + 24))
  return onOneLine(run?.[0] ?? String.fromCodePoint(text.codePointAt(at) ?? 32))
}

/** A text on one line; of a long one the neighbourhood of `at`. */
export function excerpt(text: string, at: number): string {
  if (text.length <= SHOWN) return onOneLine(text)
  const from = Math.max(0, Math.min(at - SHOWN / 2, text.length - SHOWN))
  const to = Math.min(text.length, from + SHOWN)
  return `${from > 0 ? '…' : ''}${onOneLine(text.slice(from, to))}${to < text.length ? '…' : ''}`
}
