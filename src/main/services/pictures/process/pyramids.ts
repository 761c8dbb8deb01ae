import type { AnyReason } from '../../../../core/words/reason.ts'
import type { Outcome } from '../../process/outcome.ts'
import { ProcessPool } from '../../process/process-pool.ts'
import { reason } from '../../words/services-words.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
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
 * stopped, and what worked on it has ended, or was told to and takes too long about it.
 * @throws PyramidError
 */
export type MakePyramid = (order: PyramidOrder, how: MakingWith) => Promise<string[] | null>

/** @param program the built program; without it only the picture of the whole is made, in this process */
export function pyramids(program: string | undefined): MakePyramid {
  if (program === undefined) return makeHere
  const pool = new ProcessPool<PyramidOrder, typeof PYRAMID_PROTOCOL>(
    { path: program, args: [] },
    PYRAMID_PROTOCOL,
    {
      most: Number.POSITIVE_INFINITY,
      kept: 0,
    },
  )
  return async (order, how) => {
    try {
      const outcome = await pool.do(order, madeFilesSchema, how)
      if (outcome.end === 'answer') return outcome.answer
      const because = outcome.end === 'refusal' ? outcome.refusal.because : whyEnded(outcome, how.memory)
      throw new PyramidError(because)
    } catch (error) {
      if (how.signal.aborted) return null
      throw error
    }
  }
}

type Ended = Exclude<Outcome<never, never>, { end: 'answer' | 'refusal' }>

function whyEnded(outcome: Ended, memory: number): AnyReason {
  switch (outcome.end) {
    case 'memory':
      return reason('pyramid.too-much-memory', { most: memory })
    case 'late':
      return reason('pyramid.too-slow')
    case 'death':
      return outcome.how === null
        ? reason('pyramid.not-started')
        : reason('pyramid.ended-early', { how: outcome.how })
  }
}

async function makeHere(order: PyramidOrder, { signal, heard }: MakingWith): Promise<string[] | null> {
  if (order.make !== 'whole') throw new PyramidError(reason('pyramid.not-built'))
  const files = await makePictures(order, (news) => {
    if (!signal.aborted) heard?.(news)
  })
  return signal.aborted ? null : files
}
