/** Milliseconds between two looks. */
const LOOK = 250

/**
 * Watches how much memory this process uses.
 * @param most bytes
 * @param over called once when it is more, with the end of a sentence that says so
 * @returns ends it
 */
export function watchMemory(most: number, over: (because: string) => void): () => void {
  const timer = setInterval(() => {
    if (process.memoryUsage.rss() <= most) return
    clearInterval(timer)
    const megabytes = Math.round(most / 1024 ** 2).toLocaleString('en')
    over(`it takes more memory than the ${megabytes} MB that reading a scan may use`)
  }, LOOK)
  return () => clearInterval(timer)
}
