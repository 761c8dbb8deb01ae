import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke, GreyWindow } from '../../core/imaging/index.ts'
import { reason } from '../words/window-words.ts'
import type { FromSearcher, NotFound, ToSearcher } from './messages.ts'
import type { SearchWish } from './search-wish.ts'

interface Waiting {
  message: ToSearcher
  answer: (found: FoundStroke | NotFound | null) => void
}

const STOPPED: NotFound = { kind: 'none', because: reason('search.stopped') }

/** Milliseconds without a search after which the worker is ended; to begin another takes less than a tenth of a second. */
const REST = 10_000

/**
 * Looks for strokes off the main thread, one at a time. What was picked goes first; of what only follows the pointer
 * just the newest is looked at.
 */
export class Searcher {
  #worker: Worker | null = null
  #rest: ReturnType<typeof setTimeout> | undefined
  #asked = 0
  readonly #picks: Waiting[] = []
  #glance: Waiting | null = null
  #underWay: Waiting | null = null
  #stopped = false

  /** The one at work, or a new one. */
  #atWork(): Worker {
    clearTimeout(this.#rest)
    this.#worker ??= this.#begun()
    return this.#worker
  }

  #begun(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<FromSearcher>) => {
      const done = this.#underWay
      this.#underWay = null
      this.#next()
      done?.answer(data.found)
    })
    worker.addEventListener('error', () => {
      this.#stopped = true
      const waiting = [this.#underWay, ...this.#picks.splice(0), this.#glance]
      this.#underWay = null
      this.#glance = null
      for (const one of waiting) one?.answer(STOPPED)
    })
    return worker
  }

  /** What is under a pick. */
  pick(
    windows: readonly GreyWindow[],
    rough: readonly Pixel[],
    wish: SearchWish,
  ): Promise<FoundStroke | NotFound> {
    return new Promise((resolve) => {
      this.#picks.unshift({
        message: { ask: ++this.#asked, windows, rough, wish },
        answer: (found) => resolve(found ?? STOPPED),
      })
      this.#next()
    })
  }

  /** What is under the pointer; null when it has moved on before that was looked at. */
  glance(
    windows: readonly GreyWindow[],
    rough: readonly Pixel[],
    wish: SearchWish,
  ): Promise<FoundStroke | NotFound | null> {
    return new Promise((resolve) => {
      this.#glance?.answer(null)
      this.#glance = { message: { ask: ++this.#asked, windows, rough, wish }, answer: resolve }
      this.#next()
    })
  }

  #next(): void {
    if (this.#underWay !== null) return
    const next = this.#picks.shift() ?? this.#glance
    if (next === null) {
      clearTimeout(this.#rest)
      this.#rest = setTimeout(() => this.#end(), REST)
      return
    }
    if (next === this.#glance) this.#glance = null
    if (this.#stopped) {
      next.answer(STOPPED)
      return
    }
    this.#underWay = next
    // Handed over and not copied: they may go round all of the sheet.
    const buffers = next.message.windows.map(({ data }) => data.buffer as ArrayBuffer)
    this.#atWork().postMessage(next.message, buffers)
  }

  /** Ends the worker: its memory goes with it, a hundred megabytes after a large circle. */
  #end(): void {
    this.#worker?.terminate()
    this.#worker = null
  }
}

let searcher: Searcher | undefined

/** The one that this window has, started when first wanted. */
export function theSearcher(): Searcher {
  searcher ??= new Searcher()
  return searcher
}
