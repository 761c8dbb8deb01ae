import type { FoundStroke } from '../../core/imaging/index.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { reason } from '../words/window-words.ts'
import { findStroke } from './find-stroke.ts'
import type { FromSearcher, NotFound, ToSearcher } from './messages.ts'

/** A buffer that can be emptied (ECMAScript 2024), where the browser knows that. */
interface Returnable {
  transfer?(length: number): unknown
}

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
  // Up to ten megabytes that nobody looks at again: given back at once, and not when rubbish is collected.
  for (const { data: greys } of data.windows) (greys.buffer as Returnable).transfer?.(0)
  self.postMessage(answer)
})
