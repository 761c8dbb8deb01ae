/**
 * A workbench that has the pictures of one sheet made, in a process of its own: `JOB PROGRAM HOME`, and `far` to have a
 * tile at the lower right asked for at first sight. Prints what it took as JSON: see `HostFigures`.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { pictureAddress } from '../../src/contract/picture-addresses.ts'
import type { SheetPictures } from '../../src/contract/pictures.ts'
import { Workbench } from '../../src/main/services/workbench/workbench.ts'

export interface HostFigures {
  /** Milliseconds from asking for the sheet. */
  overview: number
  ready: number
  /** From first sight until the tile at the lower right was there, if it was asked for. */
  far?: number
  exact: boolean
  /** The longest that an ask, a picture and any turn of the loop took meanwhile, ms. */
  ask: number
  picture: number
  loop: number
  /** The same of the loop before there was anything to do, for as many seconds: what the machine does by itself. */
  idle: number
  /** How it ended. */
  sentence: string
}

/** Milliseconds. */
const IDLE = 4000

const [job = '', pyramidProgram = '', home = '', goFar] = process.argv.slice(2)
const place = (name: string): string => `${home}/${name}`
const bench = new Workbench({
  host: 'local',
  version: '0',
  log: () => undefined,
  pyramidProgram,
  places: {
    settings: place('settings'),
    shelf: place('shelf'),
    sample: place('sample'),
    temporary: place('temporary'),
  },
})
await bench.openFolder(job)
const ended = new Promise<string>((resolve) => {
  bench.listen((event) => {
    if (event.kind !== 'pictures' || ['overview', 'tiles'].includes(event.progress.state)) return
    resolve(event.progress.state === 'ready' ? '' : event.progress.sentence)
  })
})
const delay = monitorEventLoopDelay({ resolution: 5 })
let going = true

/** Does something over and over; the longest that it took. */
async function longest(pause: number, what: () => Promise<unknown>): Promise<number> {
  let most = 0
  while (going) {
    const began = performance.now()
    await what()
    most = Math.max(most, performance.now() - began)
    await new Promise((resolve) => setTimeout(resolve, pause))
  }
  return most
}

delay.enable()
await new Promise((resolve) => setTimeout(resolve, IDLE))
const idle = delay.max / 1e6
delay.reset()
const began = performance.now()
const reply = await bench.ask('show-sheet', { sheet: 'S1' })
if (!reply.ok) throw new Error(reply.sentence)
const shown = reply.answer as SheetPictures
const { version } = shown
const overview = pictureAddress({ sheet: 'S1', version, kind: 'overview' })
const asked = longest(30, () => bench.ask('look', {}))
if ((await bench.picture(overview)) === null) throw new Error('no overview')
const seen = performance.now() - began
const pictured = longest(30, () => bench.picture(overview))
const [level] = shown.levels
if (level === undefined) throw new Error('no levels')

/** Milliseconds until a tile at the lower right is there. */
async function farTile(columns: number, rows: number): Promise<number> {
  const began = performance.now()
  const at = { level: 0, column: columns - 3, row: rows - 3 }
  const tile = await bench.picture(pictureAddress({ sheet: 'S1', version, kind: 'tile', ...at }))
  if (tile === null) throw new Error('no tile')
  return performance.now() - began
}
const far = goFar === undefined ? undefined : farTile(level.columns, level.rows)
const sentence = await ended
const ready = performance.now() - began
going = false
const figures: HostFigures = {
  overview: seen,
  ready,
  ...(far === undefined ? {} : { far: await far }),
  exact: shown.exact,
  ask: await asked,
  picture: await pictured,
  loop: delay.max / 1e6,
  idle,
  sentence,
}
await bench.close()
console.log(JSON.stringify(figures))
process.exit()
