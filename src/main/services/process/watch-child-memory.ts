import { readFile } from 'node:fs/promises'

/** Milliseconds between two looks. */
const LOOK = 200

const PAGES = /^\d+ (\d+)/

/** Of the systems that have /proc; all that run this have pages of this size or larger. */
const PAGE = 4096

/**
 * Watches from outside how much memory a process uses, which helps where it is too busy to watch itself; on systems
 * without /proc it has to.
 * @param most bytes
 * @param until ends it
 */
export function watchChildMemory(pid: number, most: number, over: () => void, until: AbortSignal): void {
  if (process.platform !== 'linux') return
  const timer = setInterval(() => {
    readFile(`/proc/${pid}/statm`, 'utf8').then(
      (text) => {
        if (Number(PAGES.exec(text)?.[1] ?? 0) * PAGE > most) over()
      },
      () => undefined,
    )
  }, LOOK)
  until.addEventListener('abort', () => clearInterval(timer), { once: true })
}
