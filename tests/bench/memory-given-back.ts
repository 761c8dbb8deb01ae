/**
 * What the page holds in memory after a sheet of 13,600 × 17,600 pixels was moved about, by kind, and what it gives back when
 * its rubbish is collected and when the browser is told that memory is short. Needs a build and Linux.
 */
import { mkdtemp, readFile, realpath, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openBrowser } from '../window/harness/browser.ts'
import { startProgram } from '../window/harness/program.ts'
import { makeLargeSheet } from './large-sheet.ts'
import { megabytes, processesOf } from './page-memory.ts'

/** Proportional megabytes of a process by what the memory is of. */
async function byKind(process: number): Promise<string> {
  const maps = await readFile(`/proc/${process}/smaps`, 'utf8')
  const sums = new Map<string, number>()
  let kind = ''
  for (const line of maps.split('\n')) {
    const [, path] = /^[0-9a-f]+-[0-9a-f]+ \S+ \S+ \S+ \d+\s*(.*)$/.exec(line) ?? []
    if (path !== undefined) {
      kind =
        path === '' || path.startsWith('[')
          ? 'its own'
          : /shm|memfd|deleted/.test(path)
            ? 'shared'
            : 'code and files'
    }
    const [, kilobytes] = /^Pss:\s+(\d+) kB$/.exec(line) ?? []
    if (kilobytes !== undefined) sums.set(kind, (sums.get(kind) ?? 0) + Number(kilobytes) / 1024)
  }
  return [...sums].map(([name, size]) => `${name} ${size.toFixed(0)} MB`).join(', ')
}

const folder = await realpath(await mkdtemp(join(tmpdir(), 'scantling-bench-')))
const browser = await openBrowser()
try {
  const job = join(folder, 'job')
  await makeLargeSheet(job)
  const program = await startProgram({ folder: job }, folder)
  const page = await browser.newPage({ viewport: { width: 1920, height: 1080 }, reducedMotion: 'reduce' })
  await page.goto(program.address)
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor({ timeout: 300_000 })
  const { page: process } = await processesOf(page)
  const session = await page.context().newCDPSession(page)
  const tell = async (when: string): Promise<void> => {
    await page.waitForTimeout(3000)
    const { usedSize, totalSize } = await session.send('Runtime.getHeapUsage')
    const script = `script ${(usedSize / 2 ** 20).toFixed(0)} of ${(totalSize / 2 ** 20).toFixed(0)} MB`
    console.log(`${when}: ${(await megabytes(process)).toFixed(0)} MB (${await byKind(process)}; ${script})`)
  }
  await tell('the sheet as a whole')
  const box = await page.getByRole('application').boundingBox()
  if (box === null) throw new Error('There is no sheet in sight.')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  for (let k = 0; k < 8; k++) await page.mouse.wheel(0, -200)
  for (let k = 0; k < 60; k++) {
    await page.mouse.move(x + 500 * Math.sin(k), y + 200 * Math.cos(k))
    await page.mouse.down()
    await page.mouse.move(x - 500 * Math.sin(k), y - 200 * Math.cos(k), { steps: 6 })
    await page.mouse.up()
  }
  await tell('moved about')
  await session.send('HeapProfiler.enable')
  await session.send('HeapProfiler.collectGarbage')
  await tell('rubbish collected')
  for (const level of ['moderate', 'critical'] as const) {
    await session.send('Memory.simulatePressureNotification', { level })
    await tell(`told that memory is short, ${level}`)
  }
  await page.mouse.move(x, y, { steps: 5 })
  await page.mouse.wheel(0, -200)
  await tell('looked at again')
  await page.context().close()
  await program.end()
} finally {
  await browser.close()
  await rm(folder, { recursive: true, force: true })
}
