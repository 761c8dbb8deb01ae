import type { FoundStroke } from '../../core/imaging/index.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { findStroke } from './find-stroke.ts'
import type { FromSearcher, NotFound, ToSearcher } from './messages.ts'

function found({ rough, window, wish }: ToSearcher): FoundStroke | NotFound {
  try {
    return findStroke(window, rough, wish)
  } catch (error) {
    const because =
      error instanceof ScantlingError
        ? error.message
        : `The stroke could not be looked for because of a fault in the program (${String(error)}). Pick by hand, and please report this.`
    return { kind: 'none', because }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToSearcher>) => {
  const answer: FromSearcher = { ask: data.ask, found: found(data) }
  self.postMessage(answer)
})
