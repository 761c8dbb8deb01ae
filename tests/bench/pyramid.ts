/**
 * How soon something is to be seen of a scan of 240 megapixels and how soon its pyramid is whole, beside what the
 * library takes by itself in the same run: its raw decode, and `sharp(file).tile()` with tiles of the same size in JPEG,
 * as it makes them when nothing is said. Ours of these grey scans are PNG, without loss. Each runs in a process of its
 * own; times of ours begin when the sheet is asked for, and count the starting of processes; those of the library begin
 * when it is loaded. The least of the rounds counts, but of what holds up the host the most. Needs Linux. Exits with 1
 * when a figure is over its bar.
 */
import { execFile, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { promisify } from 'node:util'
import { bundleProgram } from '../main/fixtures/bundle-program.ts'
import { children, peakMemory } from './peak-memory.ts'
import type { HostFigures } from './pyramid-host.ts'
import { makePyramidJob } from './pyramid-job.ts'
import { HEIGHT, makeScans, WIDTH } from './pyramid-scan.ts'

const ROUNDS = 2
/** Bars: times the library's own; milliseconds; megabytes. */
const BARS = { '×': 1.5, ms: 100, MB: 1024 }

const run = async (program: string, ...args: string[]): Promise<number> =>
  Number((await promisify(execFile)(process.execPath, [program, ...args])).stdout)

/** What a host took, and the most memory of its process and of those that it started, megabytes. */
interface Watched extends HostFigures {
  host: number
  helper: number
}

async function runHost(program: string, ...args: string[]): Promise<Watched> {
  const child = spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'pipe', 'inherit'] })
  let [text, going, host, helper] = ['', true, 0, 0]
  child.stdout.on('data', (piece: Buffer) => {
    text += piece
  })
  child.once('close', () => {
    going = false
  })
  while (going && child.pid !== undefined) {
    host = Math.max(host, await peakMemory(child.pid))
    for (const one of await children(child.pid)) helper = Math.max(helper, await peakMemory(one))
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  return { ...(JSON.parse(text) as HostFigures), host, helper }
}

let over = false
function told(what: string, value: number, unit: keyof typeof BARS): void {
  const isOver = !(value <= BARS[unit])
  over ||= isOver
  const figure = `${value.toFixed(unit === '×' ? 2 : 0)} ${unit}`
  console.log(`  ${what}: ${figure} (at most ${BARS[unit]})${isOver ? ' OVER' : ''}`)
}

const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`

const home = await mkdtemp(join(tmpdir(), 'scantling-pyramid-'))
const pyramid = await bundleProgram('src/main/services/pictures/process/pyramid-process.ts')
const host = await bundleProgram('tests/bench/pyramid-host.ts')
const alone = await bundleProgram('tests/bench/pyramid-alone.ts')
try {
  const [grey, bitonal] = [join(home, 'grey.tif'), join(home, 'bitonal.tif')]
  await makeScans(grey, bitonal)
  for (const scan of [grey, bitonal]) {
    const job = join(home, `job-${basename(scan, '.tif')}`)
    const file = await makePyramidJob(job, scan)
    const [decodes, tilings, ours]: [number[], number[], Watched[]] = [[], [], []]
    for (let round = 0; round < ROUNDS; round++) {
      const beside = await mkdtemp(join(home, 'alone-'))
      decodes.push(await run(alone.path, 'decode', file))
      tilings.push(await run(alone.path, 'tile', file, beside))
      await rm(beside, { recursive: true })
      ours.push(await runHost(host.path, job, pyramid.path, home))
      await rm(join(job, '.cache'), { recursive: true })
    }
    const { far = Number.NaN } = await runHost(host.path, job, pyramid.path, home, 'far')
    const least = (of: (one: Watched) => number): number => Math.min(...ours.map(of))
    const most = (of: (one: Watched) => number): number => Math.max(...ours.map(of))
    const [decode, tiling] = [Math.min(...decodes), Math.min(...tilings)]
    const [overview, ready] = [least((one) => one.overview), least((one) => one.ready)]
    const failed = ours.map(({ sentence }) => sentence).find((sentence) => sentence !== '')
    if (failed !== undefined) throw new Error(failed)
    const exact = ours.every((one) => one.exact) ? 'exact' : 'not exact'
    const kind = scan === grey ? 'Grey, LZW' : 'One bit, CCITT group 4'
    console.log(`${kind}, ${WIDTH} × ${HEIGHT}; tiles ${exact}`)
    console.log(`  the library: decoding ${seconds(decode)}, tiling ${seconds(tiling)}`)
    console.log(`  here: something to see ${seconds(overview)}, pyramid whole ${seconds(ready)}`)
    console.log(`  a tile at the lower right, asked for at first sight, there after ${seconds(far)}`)
    told('something to see', overview / decode, '×')
    told('pyramid whole', ready / tiling, '×')
    const idle = most((one) => one.idle)
    told('an ask, longest', Math.max(...ours.map(({ ask }) => ask)), 'ms')
    told('a picture, longest', Math.max(...ours.map(({ picture }) => picture)), 'ms')
    told('the loop held up, longest', Math.max(...ours.map(({ loop }) => loop)), 'ms')
    console.log(`  the loop held up with nothing to do, longest: ${idle.toFixed(0)} ms`)
    told('memory of the host', Math.max(...ours.map((one) => one.host)), 'MB')
    told('memory of the process that makes pictures', Math.max(...ours.map(({ helper }) => helper)), 'MB')
  }
} finally {
  for (const program of [pyramid, host, alone]) await program.remove()
  await rm(home, { recursive: true, force: true })
}
process.exit(over ? 1 : 0)
