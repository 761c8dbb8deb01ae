import { type ChildProcess, fork } from 'node:child_process'
import type { Limits } from '../../../../contract/limits.ts'
import { watchChild } from '../../process/watch-child-memory.ts'
import { ServiceError } from '../../service-error.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import { howItEnded, tookTooLong } from './how-it-ended.ts'
import type { FromReader, ReadAnswer, ReadAnswers, ReadOrder, ReadTask, ToReader } from './reader-messages.ts'
import { type ReaderProgram, readerProgram } from './reader-program.ts'
import { timeAllowed } from './time-allowed.ts'

/** Milliseconds that it is kept without work, so that one look after another starts at once. */
const KEPT = 10_000

/** Milliseconds that it may take to begin: on a busy machine, from source, it is slow. */
const BEGINS_WITHIN = 60_000

interface Waiting {
  order: ReadOrder
  signal: AbortSignal | undefined
  resolve: (answer: ReadAnswers[keyof ReadAnswers]) => void
  reject: (error: unknown) => void
}

interface Running {
  child: ChildProcess
  ready: Promise<void>
  memory: number
}

export interface ReadingOptions {
  /** Whether what was asked for last is done first. */
  newestFirst?: boolean
  /** Whether what was begun is done to its end though it is given up: what comes of it is kept for the next who asks. */
  finishes?: boolean
  program?: ReaderProgram | undefined
}

/**
 * A process that reads scans, begun when it is needed, one task at a time. One that crashes, takes too long or too
 * much memory is ended, and the next task gets a new one.
 */
export class ReadingProcess {
  readonly #newestFirst: boolean
  readonly #finishes: boolean
  readonly #program: ReaderProgram | undefined
  readonly #waiting: Waiting[] = []
  #running: Running | undefined
  #working = false
  #idle: NodeJS.Timeout | undefined
  #ids = 0

  constructor({ newestFirst = false, finishes = false, program = readerProgram() }: ReadingOptions = {}) {
    this.#newestFirst = newestFirst
    this.#finishes = finishes
    this.#program = program
  }

  /**
   * Has a task done.
   * @param signal gives it up, and ends the process when it is at it, unless it finishes what it began
   * @throws ServiceError with a sentence that names the scan; ScanLocked when it wants a password
   */
  do<T extends ReadTask>(order: ReadOrder<T>, signal?: AbortSignal): Promise<ReadAnswer<T>> {
    return new Promise<ReadAnswer<T>>((resolve, reject) => {
      const waiting: Waiting = {
        order,
        signal,
        resolve: (answer) => resolve(answer as ReadAnswer<T>),
        reject,
      }
      this.#waiting.push(waiting)
      void this.#work()
    })
  }

  /** Ends the process, when it has nothing to do. */
  end(): void {
    clearTimeout(this.#idle)
    if (!this.#working) this.#kill()
  }

  async #work(): Promise<void> {
    if (this.#working) return
    this.#working = true
    clearTimeout(this.#idle)
    for (let next = this.#next(); next !== undefined; next = this.#next()) {
      try {
        next.signal?.throwIfAborted()
        next.resolve(await this.#attempt(next))
      } catch (error) {
        next.reject(error)
      }
    }
    this.#working = false
    this.#rest()
  }

  #next(): Waiting | undefined {
    return this.#newestFirst ? this.#waiting.pop() : this.#waiting.shift()
  }

  #rest(): void {
    if (this.#running === undefined) return
    hold(this.#running.child, false)
    this.#idle = setTimeout(() => this.#kill(), KEPT)
    this.#idle.unref()
  }

  #kill(): void {
    this.#running?.child.kill('SIGKILL')
    this.#running = undefined
  }

  async #attempt({ order, signal }: Waiting): Promise<ReadAnswers[keyof ReadAnswers]> {
    const running = this.#start(order)
    hold(running.child, true)
    const { child } = running
    const id = ++this.#ids
    return new Promise((resolve, reject) => {
      const ended = new AbortController()
      const fail = (error: unknown): void => {
        ended.abort()
        this.#kill()
        reject(error)
      }
      const on = { signal: ended.signal }
      const heard = (message: FromReader): void => {
        if (message.kind === 'memory') fail(howItEnded('memory', order))
        if (!('id' in message) || message.id !== id) return
        ended.abort()
        if (message.kind === 'answer') resolve(message.answer)
        else reject(message.locked ? new ScanLocked(message.sentence) : new ServiceError(message.sentence))
      }
      const gone = (): void => fail(howItEnded('crash', order))
      const givenUp = (): void => fail(signal?.reason)
      child.on('message', heard)
      child.once('exit', gone)
      child.on('error', gone)
      if (!this.#finishes) signal?.addEventListener('abort', givenUp, on)
      let timer = setTimeout(gone, BEGINS_WITHIN)
      const stopWatching = watchChild(child.pid ?? 0, order.limits.memory, () =>
        fail(howItEnded('memory', order)),
      )
      ended.signal.addEventListener('abort', () => {
        child.off('message', heard)
        child.off('exit', gone)
        child.off('error', gone)
        clearTimeout(timer)
        stopWatching()
      })
      void Promise.all([timeAllowed(order), running.ready]).then(([seconds]) => {
        if (ended.signal.aborted) return
        clearTimeout(timer)
        timer = setTimeout(() => fail(tookTooLong(order, seconds)), seconds * 1000)
        child.send({ id, order } satisfies ToReader, () => undefined)
      })
    })
  }

  #start({ called, limits }: ReadOrder): Running {
    const { memory } = limits
    if (this.#running !== undefined && this.#running.memory === memory && this.#running.child.connected) {
      return this.#running
    }
    this.#kill()
    if (this.#program === undefined) {
      throw new ServiceError(
        `The scan ${called} can't be read because the program that reads scans is not there: build the project with ` +
          '"npm run build".',
      )
    }
    const child = fork(this.#program.path, this.#program.args, {
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      execArgv: [`--max-old-space-size=${heapOf(limits)}`],
      serialization: 'advanced',
    })
    const ready = new Promise<void>((resolve) => child.once('message', () => resolve()))
    child.once('exit', () => {
      if (this.#running?.child === child) this.#running = undefined
    })
    // One that can't be started is told of where it is waited for.
    child.on('error', () => undefined)
    this.#running = { child, ready, memory }
    return this.#running
  }
}

const heapOf = ({ memory }: Limits): number => Math.max(128, Math.round(memory / 1024 ** 2))

/** Whether this process waits for that one before it ends. */
function hold(child: ChildProcess, held: boolean): void {
  if (held) {
    child.ref()
    child.channel?.ref()
  } else {
    child.unref()
    child.channel?.unref()
  }
}
