import type { GreyWindow } from '../../core/imaging/index.ts'
import type { Search, SearchResult } from './search.ts'

/** What the window asks of the worker that looks for strokes. */
export interface ToSearcher {
  ask: number
  search: Search
  window: GreyWindow
}

export interface FromSearcher {
  ask: number
  result: SearchResult
}
