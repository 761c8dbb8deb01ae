import { ScantlingError } from '../../words/scantling-error.ts'

const SHOWN = 60

/** The word, number or single character that starts at `at`, as a person would point at it. */
function whatStands(text: string, at: number): string {
  const run = /^(?:\p{L}+|\.?\p{N}+)/u.exec(text.slice(at, at + 24))
  return run?.[0] ?? String.fromCodePoint(text.codePointAt(at) ?? 32)
}

function onOneLine(text: string): string {
  return text.replace(/\r\n|[\r\n]/g, ' ⏎ ')
}

function excerpt(text: string, at: number): string {
  if (text.length <= SHOWN) return onOneLine(text)
  const from = Math.max(0, Math.min(at - SHOWN / 2, text.length - SHOWN))
  const to = Math.min(text.length, from + SHOWN)
  return `${from > 0 ? '…' : ''}${onOneLine(text.slice(from, to))}${to < text.length ? '…' : ''}`
}

/**
 * A written quantity that cannot be read. The message shows the text, where reading stopped and what to write.
 *
 * `at` counts UTF-16 code units from 0; it equals `text.length` when the text ends too early. The message
 * counts characters from 1.
 */
export class NotationError extends ScantlingError {
  override name = 'NotationError'
  readonly text: string
  readonly at: number

  /** @param advice whole sentences: what was expected there, or what to write instead */
  constructor(text: string, at: number, advice: string) {
    const place =
      at >= text.length ? 'at its end' : `at character ${at + 1}, “${onOneLine(whatStands(text, at))}”`
    const subject = text.trim() === '' ? 'Nothing is written where a quantity should stand.' : undefined
    super(
      subject ? `${subject} ${advice}` : `Cannot read “${excerpt(text, at)}”: stopped ${place}. ${advice}`,
    )
    this.text = text
    this.at = at
  }
}
