import type { FoundStroke } from '../../core/imaging/index.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { reason } from '../words/window-words.ts'
import { findStroke } from './find-stroke.ts'
import type { FromSearcher, NotFound, ToSearcher } from './messages.ts'

function found({ rough, windows, wish }: ToSearcher): FoundStroke | NotFound {
  try {
    return findStroke(windows, rough, wish)
  } catch (error) {
    const because =
      error instanceof ScantlingError ? error.reason : reason('search.fault', { error: String(error) })
    return { kind: 'none', because }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToSearcher>) => {
  const answer: FromSearcher = { ask: data.ask, found: found(data) }
  self.postMessage(answer)
})
