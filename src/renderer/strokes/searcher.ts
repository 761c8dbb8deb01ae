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

/**
 * Looks for strokes off the main thread, one at a time. What was picked goes first; of what only follows the pointer
 * just the newest is looked at.
 */
export class Searcher {
  readonly #worker: Worker
  #asked = 0
  readonly #picks: Waiting[] = []
  #glance: Waiting | null = null
  #underWay: Waiting | null = null
  #stopped = false

  constructor() {
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromSearcher>) => {
      const done = this.#underWay
      this.#underWay = null
      this.#next()
      done?.answer(data.found)
    })
    this.#worker.addEventListener('error', () => {
      this.#stopped = true
      const waiting = [this.#underWay, ...this.#picks.splice(0), this.#glance]
      this.#underWay = null
      this.#glance = null
      for (const one of waiting) one?.answer(STOPPED)
    })
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
    if (next === null) return
    if (next === this.#glance) this.#glance = null
    if (this.#stopped) {
      next.answer(STOPPED)
      return
    }
    this.#underWay = next
    // Handed over and not copied: they may go round all of the sheet.
    const buffers = next.message.windows.map(({ data }) => data.buffer as ArrayBuffer)
    this.#worker.postMessage(next.message, buffers)
  }
}

let searcher: Searcher | undefined

/** The one that this window has, started when first wanted. */
export function theSearcher(): Searcher {
  searcher ??= new Searcher()
  return searcher
}
