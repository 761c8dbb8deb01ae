import type { z } from 'zod'
import type { Limits } from '../../../../contract/limits.ts'
import type { LengthContext } from '../../../../core/quantity/parse/parse-length.ts'
import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { SeenWord } from '../../../../core/reading/labels/seen-word.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import type { PageArea } from '../../pictures/layout/block.ts'
import type { ChildProgram } from '../../process/child.ts'
import type { Outcome } from '../../process/outcome.ts'
import { ProcessPool } from '../../process/process-pool.ts'
import { ServiceError } from '../../service-error.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason } from '../../words/services-words.ts'
import type { PageSource } from '../page/page-source.ts'
import { figureProgram } from './figure-program.ts'
import {
  type BoxesRead,
  type BoxesToRead,
  FIGURE_ANSWERS,
  FIGURE_PROTOCOL,
  type FigureOrder,
  type FigureTask,
  type Rows,
} from './figure-protocol.ts'

/** So much is read at once. */
export const READ_AT_ONCE = 2

/** Milliseconds that a process is kept without work: while somebody works on a sheet, the next box is read at once. */
const KEPT = 5 * 60_000

export interface FiguresWith {
  /** What messages call the page. */
  page: PagePart
  limits: Limits
  /** Gives it up, and ends the process that is at it. */
  signal?: AbortSignal | undefined
}

/** The process that was to read figures is no more. */
export class ReadingEnded extends ServiceError {
  override name = 'ReadingEnded'
}

/** Reads figures in processes of their own, kept while there is more to read. */
export class FigureReader {
  readonly #pool: ProcessPool<FigureOrder, typeof FIGURE_PROTOCOL> | undefined

  constructor(program: ChildProgram | undefined = figureProgram()) {
    // What is asked for last is a box that somebody waits for.
    const how = { kept: KEPT, most: READ_AT_ONCE, newestFirst: true }
    if (program !== undefined) this.#pool = new ProcessPool(program, FIGURE_PROTOCOL, how)
  }

  /**
   * Where there may be figures on a part of a page.
   * @param part rows of the page with its sides halved `level` times
   * @param context what a bare number means
   * @throws ServiceError when it can't be read, ReadingEnded among them; the reason of the signal when it is given up
   */
  find(
    source: PageSource,
    part: { level: number; rows: Rows },
    context: LengthContext,
    how: FiguresWith,
  ): Promise<BoxToRead[]> {
    return this.#do(source, { do: 'find', ...part, context }, FIGURE_ANSWERS.find, how)
  }

  /**
   * Reads what is in boxes of a page.
   * @throws as `find`
   */
  read(source: PageSource, what: BoxesToRead, how: FiguresWith): Promise<BoxesRead> {
    const expects = FIGURE_ANSWERS.read(what.boxes.length, what.known.length)
    return this.#do(source, { do: 'read', ...what }, expects, how)
  }

  /**
   * The words on a part of a page.
   * @param area of the page with its sides halved `level` times
   * @throws as `find`
   */
  words(source: PageSource, area: PageArea, level: number, how: FiguresWith): Promise<SeenWord[]> {
    return this.#do(source, { do: 'words', area, level }, FIGURE_ANSWERS.words, how)
  }

  /** Ends the processes that have nothing to do. */
  end(): void {
    this.#pool?.end()
  }

  async #do<A>(
    page: PageSource,
    task: FigureTask,
    expects: z.ZodType<A>,
    { page: named, limits, signal }: FiguresWith,
  ): Promise<A> {
    const because = (why: AnyReason): AnyReason => reason('figures.not-read', { ...named, because: why })
    if (this.#pool === undefined) throw new ServiceError(because(reason('figures.no-program')))
    const { memory, seconds } = limits
    const outcome = await this.#pool.do({ page, task }, expects, {
      memory,
      signal,
      seconds: async () => seconds,
    })
    if (outcome.end === 'answer') return outcome.answer
    if (outcome.end === 'refusal') throw new ServiceError(because(outcome.refusal.because))
    throw new ReadingEnded(because(howItEnded(outcome, memory)))
  }
}

function howItEnded(
  outcome: Exclude<Outcome<never, never>, { end: 'answer' | 'refusal' }>,
  memory: number,
): AnyReason {
  switch (outcome.end) {
    case 'memory':
      return reason('figures.too-much-memory', { most: memory })
    case 'late':
      return reason('figures.too-slow', { allowed: outcome.seconds })
    case 'death':
      return outcome.how === null
        ? reason('figures.not-started')
        : reason('figures.ended-early', { how: outcome.how })
  }
}
