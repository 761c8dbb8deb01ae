/** Bytes that one side puts in and another takes out; a put waits until what it put was taken. */
export class ByteQueue implements AsyncIterable<Uint8Array> {
  #waiting: { bytes: Uint8Array; taken: () => void } | null = null
  #over: { error?: Error } | null = null
  #wake: () => void = () => undefined

  /** Resolves once the bytes are taken; never when nobody takes any more. */
  put(bytes: Uint8Array): Promise<void> {
    return new Promise((resolve) => {
      if (this.#over !== null) return
      this.#waiting = { bytes, taken: resolve }
      this.#wake()
    })
  }

  end(): void {
    this.#close({})
  }

  /** Whoever takes gets this error instead of more bytes. */
  fail(error: Error): void {
    this.#waiting = null
    this.#close({ error })
  }

  #close(over: { error?: Error }): void {
    this.#over ??= over
    this.#wake()
  }

  async *[Symbol.asyncIterator](): AsyncGenerator<Uint8Array, void> {
    try {
      for (;;) {
        if (this.#over?.error !== undefined) throw this.#over.error
        if (this.#waiting !== null) {
          const { bytes, taken } = this.#waiting
          this.#waiting = null
          taken()
          yield bytes
        } else if (this.#over !== null) {
          return
        } else {
          await new Promise<void>((resolve) => {
            this.#wake = resolve
          })
        }
      }
    } finally {
      this.#over ??= {}
      this.#waiting = null
    }
  }
}
