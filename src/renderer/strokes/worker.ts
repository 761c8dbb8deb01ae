import { ScantlingError } from '../../core/words/scantling-error.ts'
import type { FromSearcher, ToSearcher } from './messages.ts'
import { runSearch, type SearchResult } from './search.ts'

function searched({ search, window }: ToSearcher): SearchResult {
  try {
    return runSearch(window, search)
  } catch (error) {
    const because =
      error instanceof ScantlingError
        ? error.message
        : `The stroke could not be looked for because of a fault in the program (${String(error)}). Pick by hand, and please report this.`
    return { found: { kind: 'none', because } }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToSearcher>) => {
  const answer: FromSearcher = { ask: data.ask, result: searched(data) }
  self.postMessage(answer)
})
