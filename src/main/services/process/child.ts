import { type ChildProcess, fork } from 'node:child_process'
import { setTimeout as delay } from 'node:timers/promises'
import { type FromChild, fromChildSchema, type ToChild } from './protocol.ts'

/** A program that is run in processes of its own, by Node. */
export interface ChildProgram {
  path: string
  args: string[]
}

/** Milliseconds that the end of a process is waited for: one that waits for a disk that is gone may not end at once. */
const ENDS_WITHIN = 1000

const MEBIBYTE = 1024 ** 2

/** JavaScript's own share of memory is never less, MB. */
const LEAST_HEAP = 128

/** A process that works for this one. */
export class Child {
  /** Bytes that it may use. */
  readonly memory: number
  /** Resolves when it listens. */
  readonly ready: Promise<void>
  /** Resolves when it is no more, with the signal or exit code that it ended with; null: it could not be started. */
  readonly gone: Promise<string | null>
  readonly #process: ChildProcess

  constructor({ path, args }: ChildProgram, memory: number) {
    this.memory = memory
    this.#process = fork(path, args, {
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      execArgv: [`--max-old-space-size=${Math.max(LEAST_HEAP, Math.round(memory / MEBIBYTE))}`],
      serialization: 'advanced',
    })
    this.ready = new Promise((resolve) => this.#process.once('message', () => resolve()))
    this.gone = new Promise((resolve) => {
      // Errors may be told of several times, and of a process that runs: the one that counts is that it never did.
      this.#process.on('error', () => {
        if (this.#process.pid === undefined) resolve(null)
      })
      this.#process.once('close', (code, signal) => resolve(String(signal ?? code)))
    })
  }

  get pid(): number | undefined {
    return this.#process.pid
  }

  get connected(): boolean {
    return this.#process.connected
  }

  /** @param heard called with each message; null: one that no such process sends */
  hear(heard: (message: FromChild | null) => void, until: AbortSignal): void {
    const listener = (message: unknown): void => heard(fromChildSchema.safeParse(message).data ?? null)
    this.#process.on('message', listener)
    until.addEventListener('abort', () => this.#process.off('message', listener), { once: true })
  }

  /** One that ends before it reads this is told of by `gone`. */
  send(message: ToChild): void {
    this.#process.send(message, () => undefined)
  }

  /** Whether this process waits for that one before it ends. */
  hold(held: boolean): void {
    if (held) {
      this.#process.ref()
      this.#process.channel?.ref()
    } else {
      this.#process.unref()
      this.#process.channel?.unref()
    }
  }

  /** Ends it. Resolves when it is no more, or takes too long about it. */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL')
    const waited = new AbortController()
    await Promise.race([
      this.gone,
      delay(ENDS_WITHIN, undefined, { signal: waited.signal }).catch(() => undefined),
    ])
    waited.abort()
  }
}
