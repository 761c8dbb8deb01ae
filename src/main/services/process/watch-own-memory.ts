/** Milliseconds between two looks. */
const LOOK = 250

/**
 * Watches how much memory this process uses.
 * @param most bytes
 * @param over called once when it is more
 * @returns ends it
 */
export function watchOwnMemory(most: number, over: () => void): () => void {
  const timer = setInterval(() => {
    if (process.memoryUsage.rss() <= most) return
    clearInterval(timer)
    over()
  }, LOOK)
  return () => clearInterval(timer)
}
