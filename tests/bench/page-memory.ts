import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'

/** The processes of the browser that a page is in. */
interface Processes {
  page: number
  graphics: number | undefined
}

export async function processesOf(page: Page): Promise<Processes> {
  const browser = page.context().browser()
  if (browser === null) throw new Error('The page has no browser.')
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  const renderers = processInfo.filter(({ type }) => type === 'renderer')
  // The newest one that did most: a spare one has done next to nothing.
  const busiest = renderers.sort((a, b) => b.cpuTime - a.cpuTime)[0]
  if (busiest === undefined) throw new Error('The browser has no process for the page.')
  return { page: busiest.id, graphics: processInfo.find(({ type }) => type === 'GPU')?.id }
}

/** Megabytes of a process that are its own or shared in part: script, decoded pictures, canvases, its code. Linux. */
export async function megabytes(process: number): Promise<number> {
  const rollup = await readFile(`/proc/${process}/smaps_rollup`, 'utf8')
  const kilobytes = /^Pss:\s+(\d+) kB$/m.exec(rollup)?.[1]
  if (kilobytes === undefined) throw new Error(`The memory of process ${process} is not known.`)
  return Number(kilobytes) / 1024
}
