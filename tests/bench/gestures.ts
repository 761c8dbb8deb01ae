/**
 * What 25 dimensions with their figures cost in clicks, keys and notches of the wheel, on one sheet in a window of
 * 1440 × 900, and whether what was scaled holds the truth. Run by
 * `node scripts/run-ts.mjs tests/bench/gestures.ts [PROGRAM [close-ups]]`: another build of the program is driven by the path
 * of its `bin/scantling.js`; `close-ups` the way of one that finds no strokes from the whole sheet.
 */
import { execFileSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { KeptPerson } from '../../src/main/services/people/kept-person.ts'
import { openBrowser } from '../window/harness/browser.ts'
import { SCANTLING, startProgram } from '../window/harness/program.ts'
import { type Gestures, Hand, NONE } from './gestures/hand.ts'
import { PIECES, type Piece } from './gestures/pieces.ts'
import { makePlateJob } from './gestures/plate.ts'
import { byCloseUps, fromTheWholeSheet } from './gestures/ways.ts'

const program = process.argv[2] ?? SCANTLING
const byClose = process.argv[3] === 'close-ups'
const PICTURES = process.argv[4]

const home = await mkdtemp(join(tmpdir(), 'scantling-gestures-'))
await new KeptPerson(join(home, 'settings')).keep('A. Rivet')
const folder = await makePlateJob(program, home)
const host = await startProgram({ folder }, home, program)
const browser = await openBrowser()
const spent: { kind: Piece['kind'] | 'readings'; name: string; did: Gestures }[] = []
try {
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    locale: 'en-GB',
  })
  page.setDefaultTimeout(60_000)
  page.on('pageerror', (error) => console.error(`uncaught: ${error.message}`))
  await page.goto(host.address)
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor()
  await page.getByRole('region', { name: 'Work going on' }).waitFor({ state: 'detached' })
  const hand = new Hand(page)
  await page
    .getByRole('navigation', { name: 'Stations' })
    .getByRole('button', { name: /\bPick$/ })
    .click()
  const way = byClose ? byCloseUps(hand) : fromTheWholeSheet(hand)
  for (const piece of PIECES) {
    try {
      await way.make(piece)
      spent.push({ kind: piece.kind, name: piece.name, did: hand.sinceThen() })
      if (piece.readings !== undefined) {
        await way.read(piece)
        spent.push({ kind: 'readings', name: piece.name, did: hand.sinceThen() })
      }
    } catch (error) {
      await page.screenshot({ path: join(PICTURES ?? tmpdir(), 'gestures-failed.png') })
      throw new Error(`${piece.name}: ${error instanceof Error ? error.message : error}`)
    }
    if (PICTURES !== undefined) await page.screenshot({ path: join(PICTURES, `${piece.name}.png`) })
  }
} finally {
  await browser.close()
  await host.end()
}

const plain = ({ clicks, drags, keys, notches }: Gestures): number => clicks + drags + keys + notches
const sum = (all: readonly Gestures[]): Gestures =>
  all.reduce(
    (a, b) => ({
      clicks: a.clicks + b.clicks,
      drags: a.drags + b.drags,
      keys: a.keys + b.keys,
      letters: a.letters + b.letters,
      notches: a.notches + b.notches,
    }),
    NONE,
  )

function tellSpent(): void {
  for (const { kind, name, did } of spent) {
    console.log(`${kind.padEnd(10)} ${name.padEnd(24)} ${JSON.stringify(did)}`)
  }
  const kinds = [...new Set(spent.map(({ kind }) => kind))]
  console.log('\nkind        n  clicks drags  keys notches  without letters, each   with letters, each')
  const line = (name: string, all: readonly Gestures[], n: number) => {
    const did = sum(all)
    const bare = plain(did)
    console.log(
      `${name.padEnd(10)} ${String(n).padStart(2)} ${String(did.clicks).padStart(7)} ${String(did.drags).padStart(5)} ${String(did.keys).padStart(5)} ${String(did.notches).padStart(7)} ${(bare / n).toFixed(2).padStart(22)} ${((bare + did.letters) / n).toFixed(2).padStart(20)}`,
    )
  }
  for (const kind of kinds) {
    const these = spent.filter((one) => one.kind === kind)
    line(
      kind,
      these.map(({ did }) => did),
      these.length,
    )
  }
  line(
    'all',
    spent.map(({ did }) => did),
    PIECES.length,
  )
}

interface TableEvidence {
  basis: string
  value: number | null
  u?: number
}

function tellValues(): void {
  const said = JSON.parse(
    execFileSync(process.execPath, [program, 'table', folder, '--format', 'json'], { encoding: 'utf8' }),
  )
  const rows = said.rows as { name: string; evidence: TableEvidence[] }[]
  for (const piece of PIECES) {
    const row = rows.find(({ name }) => name === piece.name.toLowerCase().replaceAll(' ', '_'))
    if (row === undefined) console.log(`MISSING ${piece.name}`)
    for (const { basis, value, u } of row?.evidence ?? []) {
      if (basis !== 'scaled' && basis !== 'derived') continue
      console.log(`${piece.name}: ${basis} ${value} u ${u}, truth ${piece.truth}`)
    }
  }
}

tellSpent()
tellValues()
await rm(home, { recursive: true, force: true })
