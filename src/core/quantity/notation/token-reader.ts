import type { NotationReason } from '../../words/notation.ts'
import { NotationError } from './notation-error.ts'
import { type Token, type TokenKind, tokenise } from './tokenise.ts'

/** A place in a written quantity, moved forward as its signs are understood. */
export class TokenReader {
  readonly text: string
  readonly #tokens: Token[]
  readonly #end: Token
  #next = 0

  /** @throws NotationError when the text has no unambiguous division into signs */
  constructor(text: string) {
    this.text = text
    this.#tokens = tokenise(text)
    this.#end = { kind: 'end', at: text.length, end: text.length, spaced: false, text: '', places: 0 }
  }

  /** Whether a comma stands for the point in any of its numbers. */
  get decimalComma(): boolean {
    return this.#tokens.some(({ comma }) => comma === true)
  }

  /** The sign at the place, or further on. */
  peek(ahead = 0): Token {
    return this.#tokens[this.#next + ahead] ?? this.#end
  }

  take(count = 1): Token {
    const token = this.peek()
    this.#next += count
    return token
  }

  /** Takes the next sign when it is of this kind. */
  accept(kind: TokenKind): Token | undefined {
    return this.peek().kind === kind ? this.take() : undefined
  }

  /** Takes the next sign when it is one of these words. */
  acceptWord(words: ReadonlySet<string>): Token | undefined {
    const token = this.peek()
    return token.kind === 'word' && words.has(token.text) ? this.take() : undefined
  }

  /** The place itself, to come back to by `backTo`. */
  mark(): number {
    return this.#next
  }

  backTo(mark: number): void {
    this.#next = mark
  }

  atEnd(): boolean {
    return this.peek().kind === 'end'
  }

  /** @returns an error that points at a sign, by default the next one */
  error(advice: NotationReason, token: Token = this.peek()): NotationError {
    return new NotationError(this.text, token.at, advice)
  }
}
