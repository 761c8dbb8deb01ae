import type { AnyReason } from '../../../core/words/reason.ts'
import { inWords } from '../words/cli-words.ts'
import { oneSentence } from './one-sentence.ts'

export const COLUMNS_WITHOUT_TERMINAL = 120

/** What a program reads from and writes to; a process has them. */
export interface Streams {
  stdin: NodeJS.ReadableStream & { destroy(): void }
  /** `columns`: of a terminal. */
  stdout: NodeJS.WritableStream & { columns?: number }
  stderr: NodeJS.WritableStream
}

const COLUMNS = /^[1-9]\d{0,4}$/

/** What one run of the command line says, and how it ends. */
export class Output {
  readonly #streams: Streams
  readonly #asJson: boolean
  #printed = false
  /** The exit code. */
  code = 0

  /** @param asJson what stops a command is printed as JSON, too, where nothing else was printed */
  constructor(streams: Streams, asJson: boolean) {
    this.#streams = streams
    this.#asJson = asJson
  }

  get stdin(): Streams['stdin'] {
    return this.#streams.stdin
  }

  /** Columns of the terminal; undefined where output goes elsewhere. */
  get terminalWidth(): number | undefined {
    return this.#streams.stdout.columns
  }

  /** Columns of the terminal; where output goes elsewhere, what COLUMNS says, else a usual page. */
  get width(): number {
    const stated = process.env['COLUMNS'] ?? ''
    return this.terminalWidth ?? (COLUMNS.test(stated) ? Number(stated) : COLUMNS_WITHOUT_TERMINAL)
  }

  /** Text for standard output, as it is. */
  print(text: string): void {
    this.#printed = true
    this.#streams.stdout.write(text)
  }

  /**
   * The same, and waits until it has gone out, so that a long text is never held whole.
   * @returns whether anybody still reads
   */
  stream(text: string): Promise<boolean> {
    this.#printed = true
    return new Promise((resolve) => {
      this.#streams.stdout.write(text, (error) => resolve(error === undefined || error === null))
    })
  }

  /** A sentence for a person on standard output, on a line of its own. */
  say(sentence: string): void {
    this.print(`${oneSentence([sentence])}\n`)
  }

  /** Something that a person should know but that stops nothing; on standard error. */
  note(says: AnyReason | string): void {
    const sentences = typeof says === 'string' ? [says] : inWords.sentences(says)
    this.#streams.stderr.write(`Note: ${oneSentence(sentences)}\n`)
  }

  /** What stops a command: one sentence on standard error, exit code 2. */
  fail(why: AnyReason): void {
    const words = oneSentence(inWords.sentences(why))
    this.#streams.stderr.write(`${words}\n`)
    this.code = 2
    if (this.#asJson && !this.#printed) {
      this.print(`${JSON.stringify({ error: { ...why, words } }, null, 2)}\n`)
    }
  }
}
