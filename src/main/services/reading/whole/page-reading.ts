import type { Limits } from '../../../../contract/limits.ts'
import type { FoundFigure, PagePlace, ReadingProgress } from '../../../../contract/readings.ts'
import type { LengthContext } from '../../../../core/quantity/parse/parse-length.ts'
import { asSentence } from '../../../../core/words/as-sentence.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { systemCause } from '../../files/system-reason.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { inWords, reason } from '../../words/services-words.ts'
import { nameOfKnown } from '../hand/name-of-known.ts'
import type { SheetHand } from '../hand/sheet-hand.ts'
import { noFigures, type ReadingsFile } from '../kept/readings-file.ts'
import type { PageSource } from '../page/page-source.ts'
import { type FigureReader, type FiguresWith, READ_AT_ONCE, ReadingEnded } from '../process/figure-reader.ts'
import { FiguresOfPage, type NextOf } from './page-figures.ts'
import { partsOf } from './page-parts.ts'
import type { ReadAgain } from './read-again.ts'

/** Milliseconds between two tellings. */
const TOLD_EVERY = 200

export interface PageReadingOf {
  /** What messages call the page. */
  page: PagePart
  size: PixelSize
  /** Pixels to the inch, where that is known. */
  dpi: number | undefined
  context: LengthContext
  limits: () => Limits
  reader: FigureReader
  source: (signal: AbortSignal) => Promise<PageSource>
  /** Where what is read is kept. Without: nowhere. */
  kept?: ReadingsFile
  /** Whose hand the page is in, as far as that is known. Without: nobody's in particular. */
  hand?: SheetHand
  /** @param figures that were not told before, or were read again */
  told: (progress: ReadingProgress, figures: FoundFigure[]) => void
}

/** What is being done now. */
type Run = { stop: AbortController; ended: Promise<void> }

type State = { is: ReadingProgress['state']; because?: AnyReason }

/** Finds and reads all figures of one page: begins, tells what comes, stops, and goes on where it was. */
export class PageReading {
  readonly #of: PageReadingOf
  readonly #figures: Promise<FiguresOfPage>
  #state: State = { is: 'unread' }
  #near: PagePlace | undefined
  #run: Run | undefined
  #untold: FoundFigure[] = []
  #ready = false
  #closed = false
  #telling: NodeJS.Timeout | undefined
  /** Whether there is something to tell. */
  #due = false
  /** Resolves when what is under way brought something, or ended. */
  #moved = turn()

  constructor(of: PageReadingOf) {
    this.#of = of
    const known = of.kept?.read() ?? Promise.resolve(noFigures())
    this.#figures = known.then((figures) => new FiguresOfPage(partsOf(of.size, of.dpi), figures))
  }

  async progress(): Promise<ReadingProgress> {
    return this.#progressOf(await this.#figures)
  }

  /** What was read so far. */
  async figures(): Promise<FoundFigure[]> {
    return (await this.#figures).figures
  }

  /** Begins, or goes on. @param near what is looked at, from now on */
  async begin(near?: PagePlace): Promise<void> {
    this.#near = near ?? this.#near
    if (this.#run?.stop.signal.aborted) await this.#run.ended
    if (this.#run !== undefined || this.#closed) return
    const stop = new AbortController()
    this.#state = { is: 'reading' }
    const ended = this.#read(stop).finally(() => {
      this.#run = undefined
    })
    this.#run = { stop, ended }
  }

  /** Of a page that was read through, begins to read again what is doubtful and may be read otherwise by now. */
  async handChanged(): Promise<void> {
    const figures = await this.#figures
    if (this.#run !== undefined || this.#progressOf(figures).state !== 'ready') return
    if (figures.left(this.#again) > 0) await this.begin()
  }

  /** What was read stays. Resolves when nothing runs any more. */
  async stop(): Promise<void> {
    this.#run?.stop.abort()
    await this.#run?.ended
  }

  /** Resolves when it is through, was stopped or failed. @throws ScantlingError when it failed */
  async ended(): Promise<void> {
    await this.#run?.ended
    if (this.#state.because !== undefined)
      throw new ScantlingError(this.#state.because, inWords(this.#state.because))
  }

  /** Stops, and waits until all is kept. */
  async close(): Promise<void> {
    this.#closed = true
    await this.stop()
    await this.#of.kept?.end()
  }

  async #read(stop: AbortController): Promise<void> {
    const figures = await this.#figures
    this.#tell(figures)
    const work = { figures, stop, under: 0 }
    const workers = Array.from({ length: READ_AT_ONCE }, (_, i) => this.#work(work, i > 0))
    const outcomes = await Promise.allSettled(workers)
    const failed = outcomes.find((one) => one.status === 'rejected')
    const broken = stop.signal.aborted && figures.left(this.#again) > 0
    const through = figures.whole && !broken
    this.#state = failed === undefined ? { is: through ? 'ready' : 'stopped' } : failure(failed.reason)
    this.#tellNow(figures)
  }

  /** Does one thing after another until nothing is left. @param finds whether it looks for figures before it reads some */
  async #work(
    work: { figures: FiguresOfPage; stop: AbortController; under: number },
    finds: boolean,
  ): Promise<void> {
    const { figures, stop } = work
    while (!stop.signal.aborted) {
      const next = figures.next(this.#near, finds, this.#again)
      if (next === undefined) {
        if (work.under === 0) return
        const moved = this.#moved.promise
        // What is found meanwhile is read at once by a process that is ready for it.
        await this.#makeReady(stop.signal, moved).catch(() => undefined)
        await moved
        continue
      }
      work.under++
      try {
        await this.#do(next, figures, stop.signal)
      } catch (error) {
        figures.leave(next)
        if (stop.signal.aborted) return
        stop.abort()
        throw error
      } finally {
        work.under--
        this.#moved.resolve()
        this.#moved = turn()
      }
    }
  }

  /** Has a process begin, load what it reads with, and learn the hand for as long as nothing else is to be done. */
  async #makeReady(signal: AbortSignal, moved: Promise<void>): Promise<void> {
    if (this.#ready) return
    this.#ready = true
    let isWanted = false
    void moved.then(() => {
      isWanted = true
    })
    const { reader, context, page, limits, source, hand } = this.#of
    for (;;) {
      const known = hand?.known ?? []
      const how = { page, limits: limits(), signal }
      const { heard } = await reader.read(await source(signal), { boxes: [], context, known }, how)
      if (isWanted || heard.length >= known.length) return
    }
  }

  async #do(next: NextOf, figures: FiguresOfPage, signal: AbortSignal): Promise<void> {
    const { reader, context, kept, page, limits, hand } = this.#of
    const how: FiguresWith = { page, limits: limits(), signal }
    const source = await this.#of.source(signal)
    if ('find' in next) {
      const rows = figures.parts.rows[next.find]
      if (rows === undefined) return
      const boxes = await reader.find(source, { level: figures.parts.level, rows }, context, how)
      figures.foundIn(next.find, boxes)
      kept?.keepBoxes(next.find, boxes)
    } else {
      try {
        const boxes = next.read.map(({ box }) => box)
        const known = hand?.known ?? []
        const { readings, heard, hand: learned } = await reader.read(source, { boxes, context, known }, how)
        hand?.heard(learned, heard.length)
        const knew = heard.flatMap((place) => (known[place] === undefined ? [] : nameOfKnown(known[place])))
        for (const [i, at] of next.read.entries()) {
          const reading = readings[i]
          if (reading === undefined) continue
          this.#untold.push(...figures.read(at, reading, knew))
          kept?.keepReading(at.part, at.place, reading, knew)
        }
      } catch (error) {
        if (!(error instanceof ReadingEnded)) throw error
        figures.endedAt(next.read)
      }
    }
    this.#tell(figures)
  }

  /** Tells now, or soon where it was told a moment ago. */
  #tell(figures: FiguresOfPage): void {
    if (this.#telling === undefined) this.#tellNow(figures)
    else this.#due = true
  }

  #tellNow(figures: FiguresOfPage): void {
    clearTimeout(this.#telling)
    this.#due = false
    this.#of.told(this.#progressOf(figures), this.#untold.splice(0))
    this.#telling = setTimeout(() => {
      this.#telling = undefined
      if (this.#due) this.#tellNow(figures)
    }, TOLD_EVERY)
    this.#telling.unref()
  }

  /** By what is read again. */
  get #again(): ReadAgain {
    const { hand } = this.#of
    return { known: (hand?.known ?? []).map(nameOfKnown), lookedAt: hand?.lookedAt ?? [] }
  }

  #progressOf(figures: FiguresOfPage): ReadingProgress {
    const { done, of } = figures.count
    const { because } = this.#state
    const state = this.#state.is === 'unread' ? standingOf(figures) : this.#state.is
    const isAgain = figures.whole && (state === 'reading' || state === 'stopped')
    const left = isAgain ? figures.left(this.#again) : 0
    const said = left > 0 ? inReasonsAgain(state, left) : inReasons(state, figures)
    return { state, done: done - left, of, sentence: asSentence(inWords(because ?? said)) }
  }
}

/** How a page stands that was read another time, if at all. */
function standingOf(figures: FiguresOfPage): ReadingProgress['state'] {
  if (figures.whole) return 'ready'
  return figures.count.done > 0 ? 'stopped' : 'unread'
}

const inReasonsAgain = (state: ReadingProgress['state'], left: number): AnyReason =>
  state === 'reading' ? reason('figures.again', { left }) : reason('figures.again-stopped', { left })

function inReasons(state: ReadingProgress['state'], figures: FiguresOfPage): AnyReason {
  const { done, of, failed } = figures.count
  if (state === 'reading') return reason(figures.found ? 'figures.reading' : 'figures.looking', { done, of })
  if (state === 'stopped') return reason('figures.stopped', { done, of })
  if (state === 'unread') return reason('figures.unread')
  const all = figures.figures
  const clear = all.filter(({ reading }) => reading.clear).length
  return reason('figures.ready', { figures: all.length, clear, failed })
}

const failure = (error: unknown): State => ({
  is: 'failed',
  because: error instanceof ScantlingError ? error.reason : systemCause(error),
})

/** Something that is waited for, and whoever brings it. */
function turn(): { promise: Promise<void>; resolve: () => void } {
  let resolve = (): void => undefined
  const promise = new Promise<void>((done) => {
    resolve = done
  })
  return { promise, resolve }
}
