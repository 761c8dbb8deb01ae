import { systemReason } from '../../files/system-reason.ts'
import { ScanLocked } from '../../scans/file/scan-locked.ts'
import { ServiceError } from '../../service-error.ts'
import { tilesOf } from '../layout/picture-names.ts'
import type { Page, PageProgress } from '../making/page.ts'

export const OVERVIEW_BEGUN: PageProgress = {
  state: 'overview',
  done: 0,
  sentence: 'Making the picture of the whole sheet.',
}

export const READY: PageProgress = {
  state: 'ready',
  done: 1,
  sentence: 'All pictures of the sheet are made.',
}

/** @param count tiles that are cut */
export function cutting({ levels }: Pick<Page, 'levels'>, count: number): PageProgress {
  const expected = levels.reduce((sum, level) => sum + tilesOf(level), 0)
  const sentence = `Cutting the sheet into tiles: ${count} of ${expected}.`
  return { state: 'tiles', done: count / expected, sentence }
}

/** @param done share that was done */
export const stopped = (done: number): PageProgress => ({
  state: 'stopped',
  done,
  sentence: 'The making of pictures was stopped, so the sheet is shown coarsely; show it again to go on.',
})

/** @param error ServiceError with a sentence, or another whose message ends one */
export function failed(error: unknown, done: number): PageProgress {
  const own = error instanceof ServiceError
  const sentence = own ? error.message : `The pictures could not be made because ${endOf(error)}.`
  return { state: 'failed', done, sentence, ...(error instanceof ScanLocked ? { locked: true } : {}) }
}

/** Why, as the end of a sentence on one line; a decoder's own words may run over several. */
const endOf = (error: unknown): string => (systemReason(error).split('\n')[0] ?? '').trim().replace(/\.$/, '')
