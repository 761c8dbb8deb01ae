import { setTimeout as delay } from 'node:timers/promises'
import type { z } from 'zod'
import { Child, type ChildProgram } from './child.ts'
import type { Outcome } from './outcome.ts'
import type { FromChild, NewsOf, Protocol, RefusalOf } from './protocol.ts'
import { watchChildMemory } from './watch-child-memory.ts'
import { type QueueOptions, WorkQueue } from './work-queue.ts'

/** Milliseconds that a process may take to begin: on a busy machine, from source, it is slow. */
const BEGINS_WITHIN = 60_000

export interface PoolOptions extends QueueOptions {
  /** Milliseconds that a process is kept without work, so that the next order starts at once. 0: each has one of its own */
  kept: number
  /** Whether what was begun is done to its end though it is given up: what comes of it is kept for the next who asks. */
  finishes?: boolean
}

/** How an order is done. */
export interface Doing<P extends Protocol> {
  /** Bytes that the process may use. */
  memory: number
  /** Seconds that it may take from when it is begun; asked when it is its turn. Without: as long as it likes. */
  seconds?: () => Promise<number>
  /** Gives it up, and ends the process when it is at it, unless it finishes what it began. */
  signal?: AbortSignal | undefined
  heard?: (news: NewsOf<P>) => void
}

/**
 * Processes that do what this one orders, begun when they are needed, each one thing at a time. One that crashes, says
 * what makes no sense, takes too long or too much memory is ended, and the next order gets a new one.
 */
export class ProcessPool<Order, P extends Protocol> {
  readonly #program: ChildProgram
  readonly #protocol: P
  readonly #kept: number
  readonly #finishes: boolean
  readonly #queue: WorkQueue
  readonly #idle: { child: Child; timer: NodeJS.Timeout }[] = []
  #ids = 0

  constructor(program: ChildProgram, protocol: P, { kept, finishes = false, ...queue }: PoolOptions) {
    this.#program = program
    this.#protocol = protocol
    this.#kept = kept
    this.#finishes = finishes
    this.#queue = new WorkQueue(queue)
  }

  /**
   * Has an order done.
   * @param expects what it is answered with
   * @throws the reason of the signal, when it is given up; the process has then ended, or takes too long about it
   */
  do<A>(order: Order, expects: z.ZodType<A>, doing: Doing<P>): Promise<Outcome<A, RefusalOf<P>>> {
    const { signal } = doing
    const until = this.#finishes ? undefined : signal
    return this.#queue.do(() => this.#attempt(order, expects, { ...doing, signal: until }), signal)
  }

  /** Ends the processes that have nothing to do. */
  end(): void {
    for (let idle = this.#idle.pop(); idle !== undefined; idle = this.#idle.pop()) {
      clearTimeout(idle.timer)
      void idle.child.kill()
    }
  }

  async #attempt<A>(order: Order, expects: z.ZodType<A>, doing: Doing<P>): Promise<Outcome<A, RefusalOf<P>>> {
    const child = this.#take(doing.memory)
    try {
      const outcome = await this.#outcome(child, order, expects, doing)
      const lives = outcome.end === 'answer' || outcome.end === 'refusal'
      if (lives && this.#kept > 0) this.#keep(child)
      else await child.kill()
      return outcome
    } catch (error) {
      await child.kill()
      throw error
    }
  }

  /** What comes first of all that may come of an order; from then on nothing more is heard. */
  async #outcome<A>(
    child: Child,
    order: Order,
    expects: z.ZodType<A>,
    { seconds, signal, heard }: Doing<P>,
  ): Promise<Outcome<A, RefusalOf<P>>> {
    const ended = new AbortController()
    try {
      return await Promise.race([
        this.#answer(child, order, expects, heard, ended.signal),
        child.gone.then((how) => ({ end: 'death', how }) as const),
        overMemory(child, ended.signal),
        tooLate(child, seconds, ended.signal),
        givenUp(signal, ended.signal),
      ])
    } finally {
      ended.abort()
    }
  }

  /** What a process says to an order, which it gets as soon as it listens. */
  #answer<A>(
    child: Child,
    order: Order,
    expects: z.ZodType<A>,
    heard: ((news: NewsOf<P>) => void) | undefined,
    until: AbortSignal,
  ): Promise<Outcome<A, RefusalOf<P>>> {
    const id = ++this.#ids
    return new Promise((resolve) => {
      const take = (message: FromChild): void => {
        if (message.kind === 'memory') resolve({ end: 'memory' })
        if (message.kind === 'ready' || message.kind === 'memory' || message.id !== id) return
        const said = this.#said(message, expects)
        if ('news' in said) heard?.(said.news)
        else resolve(said)
      }
      child.hear((message) => (message === null ? resolve(SENSELESS) : take(message)), until)
      void child.ready.then(() => {
        if (!until.aborted) child.send({ id, memory: child.memory, order })
      })
    })
  }

  /** What a message about an order says. */
  #said<A>(
    message: Exclude<FromChild, { kind: 'ready' | 'memory' }>,
    expects: z.ZodType<A>,
  ): Outcome<A, RefusalOf<P>> | { news: NewsOf<P> } {
    const { news, refusal } = this.#protocol
    try {
      if (message.kind === 'answer') return { end: 'answer', answer: expects.parse(message.answer) }
      if (message.kind === 'news') return { news: news.parse(message.news) as NewsOf<P> }
      return { end: 'refusal', refusal: refusal.parse(message.refusal) as RefusalOf<P> }
    } catch {
      return SENSELESS
    }
  }

  #take(memory: number): Child {
    for (let idle = this.#idle.pop(); idle !== undefined; idle = this.#idle.pop()) {
      const { child, timer } = idle
      clearTimeout(timer)
      if (child.memory === memory && child.connected) {
        child.hold(true)
        return child
      }
      void child.kill()
    }
    return new Child(this.#program, memory)
  }

  #keep(child: Child): void {
    child.hold(false)
    const timer = setTimeout(() => {
      this.#idle.splice(
        this.#idle.findIndex((one) => one.child === child),
        1,
      )
      void child.kill()
    }, this.#kept)
    timer.unref()
    this.#idle.push({ child, timer })
  }
}

/** Of a process that says what nobody can understand. */
const SENSELESS = { end: 'death', how: 'what it says makes no sense' } as const

const never = <T>(): Promise<T> => new Promise(() => undefined)

const after = (milliseconds: number, until: AbortSignal): Promise<void> =>
  delay(milliseconds, undefined, { signal: until }).catch(() => never())

function overMemory({ pid, memory }: Child, until: AbortSignal): Promise<{ end: 'memory' }> {
  return new Promise((resolve) => {
    if (pid !== undefined) watchChildMemory(pid, memory, () => resolve({ end: 'memory' }), until)
  })
}

async function tooLate(
  child: Child,
  seconds: Doing<Protocol>['seconds'],
  until: AbortSignal,
): Promise<{ end: 'late'; seconds: number } | { end: 'death'; how: null }> {
  const [allowed, begun] = await Promise.all([
    seconds?.(),
    Promise.race([child.ready.then(() => true), after(BEGINS_WITHIN, until).then(() => false)]),
  ])
  if (!begun) return { end: 'death', how: null }
  if (allowed === undefined) return never()
  await after(allowed * 1000, until)
  return { end: 'late', seconds: allowed }
}

function givenUp(signal: AbortSignal | undefined, until: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    if (signal?.aborted) return reject(signal.reason)
    signal?.addEventListener('abort', () => reject(signal.reason), { once: true, signal: until })
  })
}
