import type { Outcome } from '../../process/outcome.ts'
import { ProcessPool } from '../../process/process-pool.ts'
import { makePictures } from './make-pictures.ts'
import { madeFilesSchema, PYRAMID_PROTOCOL, type PyramidNews, type PyramidOrder } from './pyramid-protocol.ts'

export interface MakingWith {
  /** Bytes that the process may use. */
  memory: number
  /** Ends the process. */
  signal: AbortSignal
  heard?: (news: PyramidNews) => void
}

/**
 * Has something made of a page. Resolves with the files of a block's tiles, of other orders with none; null: it was
 * stopped, and nothing works on it any more.
 * @throws Error whose message says why it could not be made, as the end of a sentence
 */
export type MakePyramid = (order: PyramidOrder, how: MakingWith) => Promise<string[] | null>

const NOT_BUILT = 'the program that makes pictures is not there: build the project with "npm run build"'

/** @param program the built program; without it only the picture of the whole is made, in this process */
export function pyramids(program: string | undefined): MakePyramid {
  if (program === undefined) return makeHere
  const pool = new ProcessPool({ path: program, args: [] }, PYRAMID_PROTOCOL, {
    most: Number.POSITIVE_INFINITY,
    kept: 0,
  })
  return async (order, how) => {
    try {
      const outcome = await pool.do(order, madeFilesSchema, how)
      if (outcome.end === 'answer') return outcome.answer
      throw new Error(outcome.end === 'refusal' ? outcome.refusal.because : whyEnded(outcome, how.memory))
    } catch (error) {
      if (how.signal.aborted) return null
      throw error
    }
  }
}

type Ended = Exclude<Outcome<never, never>, { end: 'answer' | 'refusal' }>

function whyEnded(outcome: Ended, memory: number): string {
  switch (outcome.end) {
    case 'memory':
      return `it takes more memory than the ${Math.round(memory / 1024 ** 2).toLocaleString('en')} MB that reading a scan may use`
    case 'late':
      return 'the process that makes pictures takes too long'
    case 'death':
      return outcome.how === null
        ? 'the process that makes pictures could not be started'
        : `the process that makes pictures ended early (${outcome.how})`
  }
}

async function makeHere(order: PyramidOrder, { signal, heard }: MakingWith): Promise<string[] | null> {
  if (order.make !== 'whole') throw new Error(NOT_BUILT)
  const files = await makePictures(order, (news) => {
    if (!signal.aborted) heard?.(news)
  })
  return signal.aborted ? null : files
}
