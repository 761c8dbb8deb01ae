import { readFile } from 'node:fs/promises'

/** Milliseconds between two looks. */
const LOOK = 200

const PAGES = /^\d+ (\d+)/

/** Of the systems that have /proc; all that run this have pages of this size or larger. */
const PAGE = 4096

/**
 * Watches from outside how much memory a process uses, which helps where it is too busy to watch itself; on systems
 * without /proc it has to.
 * @returns ends it
 */
export function watchChild(pid: number, most: number, over: () => void): () => void {
  if (process.platform !== 'linux') return () => undefined
  const timer = setInterval(() => {
    readFile(`/proc/${pid}/statm`, 'utf8').then(
      (text) => {
        if (Number(PAGES.exec(text)?.[1] ?? 0) * PAGE > most) over()
      },
      () => undefined,
    )
  }, LOOK)
  return () => clearInterval(timer)
}
