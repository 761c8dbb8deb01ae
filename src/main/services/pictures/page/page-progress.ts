import { systemCause } from '../../files/system-reason.ts'
import { ScanLocked } from '../../scans/file/scan-locked.ts'
import { ServiceError } from '../../service-error.ts'
import { inWords, reason, type ServiceReason } from '../../words/services-words.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import { tilesOf } from '../layout/picture-names.ts'
import type { Page, PageProgress } from '../making/page.ts'

/** @param doing what is being done for it */
export const makingWhole = (doing: ServiceReason): PageProgress => ({
  state: 'overview',
  done: 0,
  sentence: inWords(doing),
})

export const WHOLE_BEGUN = reason('pictures.making-the-whole')

export const READY: PageProgress = { state: 'ready', done: 1, sentence: inWords(reason('pictures.ready')) }

/** @param cut tiles that are */
export function cutting({ levels }: Pick<Page, 'levels'>, cut: number): PageProgress {
  const of = levels.reduce((sum, level) => sum + tilesOf(level), 0)
  return { state: 'tiles', done: cut / of, sentence: inWords(reason('pictures.cutting', { cut, of })) }
}

/** @param done share that was done */
export const stopped = (done: number): PageProgress => ({
  state: 'stopped',
  done,
  sentence: inWords(reason('pictures.stopped')),
})

/** @param error ServiceError, or another that says why pictures could not be made */
export function failed(error: unknown, done: number): PageProgress {
  const cause = error instanceof PyramidError ? error.reason : systemCause(error)
  const why = error instanceof ServiceError ? error.reason : reason('pictures.not-made', { cause })
  return {
    state: 'failed',
    done,
    sentence: inWords(why),
    ...(error instanceof ScanLocked ? { locked: true } : {}),
  }
}
