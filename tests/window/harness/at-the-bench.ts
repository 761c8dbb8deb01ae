import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { resolve } from 'node:path'
import { describe, expect } from 'vitest'
import { placesFor } from '../../../src/main/services/places/places.ts'
import { sampleCopy } from '../../../src/main/services/workbench/sample-copy.ts'
import { temporaryFolder } from '../../main/fixtures/temporary-folder.ts'
import { givePictures } from './kept-pictures.ts'
import { knownAs } from './known-as.ts'
import { type Launcher, launchers, type OpenedWindow, type WindowWanted } from './launcher.ts'
import { Person } from './person.ts'
import type { Opens } from './program.ts'

/** Where a picture of the window is left when a test of it fails. */
const FAILED = resolve(import.meta.dirname, '../../../out/tests/window')

const SAMPLE = resolve(import.meta.dirname, '../../../samples/deck-ventilator')

const shelfBelow = (home: string): string =>
  placesFor({ platform: process.platform, env: { SCANTLING_HOME: home }, home }).shelf

export interface AtTheBench {
  page: OpenedWindow['page']
  person: Person
  window: OpenedWindow
  home: string
}

export type Session = (wanted: SessionWanted, work: Work) => Promise<void>

interface SessionWanted extends Omit<WindowWanted, 'home'> {
  home?: string
  /** Whether the pictures of the sheets are yet to be made when the window opens; else they are there. */
  withoutPictures?: true
}

type Work = (at: AtTheBench) => Promise<void>

/** The same tests in each host that there is on this machine. */
export function inEachHost(tests: (session: Session) => void): void {
  for (const launcher of launchers()) inHost(launcher, tests)
}

/** Tests in one host. */
export function inHost(launcher: Launcher, tests: (session: Session) => void): void {
  describe(`in ${launcher.name}`, () => {
    tests((wanted, work) => sessionIn(launcher, wanted, work))
  })
}

/** Opens a window, works in it, closes it: and neither the page nor the host has anything to complain of. */
async function sessionIn(launcher: Launcher, wanted: SessionWanted, work: Work): Promise<void> {
  const home = wanted.home ?? (await temporaryFolder())
  if (wanted.isStranger !== true) await knownAs(home, 'A. Rivet')
  if (wanted.withoutPictures !== true) await prepare(wanted.opens, home)
  const window = await launcher.open({ ...wanted, home })
  const { page } = window
  try {
    await work({ page, person: new Person(page), window, home })
    expect(window.faults.found).toEqual([])
    expect(window.log).toEqual([])
  } catch (error) {
    const path = resolve(FAILED, `${randomBytes(4).toString('hex')}.png`)
    await mkdir(FAILED, { recursive: true })
    const seen = await page.screenshot({ path, timeout: 20_000 }).then(
      () => `\nThe window as it was: ${path}`,
      () => '',
    )
    await window.kill().catch(() => undefined)
    await window.close().catch(() => undefined)
    const faults = window.faults.found.map((fault) => `\n  ${fault}`).join('')
    if (error instanceof Error) error.message += `${seen}${faults}\n${window.log.join('\n')}`
    throw error
  }
  await window.close()
}

/** Has the pictures of all sheets that are opened made before. */
async function prepare(opens: Opens, home: string): Promise<void> {
  if (opens === 'start') return
  const folder = opens === 'sample' ? await sampleCopy(SAMPLE, shelfBelow(home)) : opens.folder
  await givePictures(folder)
}
