import type { TileKind } from '../layout/tile-kind.ts'
import type { ToPyramid } from '../process/pyramid-messages.ts'
import { type RunningPyramid, runPyramid, type Told } from '../process/run-pyramid.ts'
import type { PageTiles } from '../tiles/page-tiles.ts'
import type { DrawnPage } from './drawn-page.ts'
import type { Page, PageProgress } from './page.ts'

/** How the tiles of a page are kept, and what makes them. */
export interface Looked {
  kind: TileKind
  tool: string
}

/** The pictures of the whole that were made in the life of this process, and need no making again. */
export interface Whole extends Looked {
  /** Milliseconds that it took. */
  took: number
}

/** What is made of a page, and who is told of it. */
export interface PageMaking {
  page: Page
  /** Where the pictures come. */
  folder: string
  whole: Whole | undefined
  tiles: PageTiles
  drawn: DrawnPage
  signal: AbortSignal
  tell: (progress: PageProgress) => void
  /** The page is being drawn, which takes a while. */
  drawing: () => void
  /** It is known how the tiles are kept. */
  looked: (kind: TileKind) => void
  /** The picture of the whole is there. */
  overviewed: () => void
  /** The pictures made of it are there as well, and tiles can be asked for. */
  begun: (whole: Whole) => void
}

type Order = ToPyramid extends infer One ? (One extends unknown ? Omit<One, 'memory'> : never) : never

/** Has something made of a page, until it has ended or the making is stopped. */
export function runOrder({ page, signal }: PageMaking, order: Order, told: Told): RunningPyramid {
  const running = runPyramid(page.program, { ...order, memory: page.limits().memory } as ToPyramid, told)
  const stop = (): void => running.stop()
  if (signal.aborted) stop()
  signal.addEventListener('abort', stop)
  const ended = running.ended.finally(() => signal.removeEventListener('abort', stop))
  return { ended, stop }
}
