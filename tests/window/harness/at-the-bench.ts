import { randomBytes } from 'node:crypto'
import { mkdir } from 'node:fs/promises'
import { resolve } from 'node:path'
import { describe, expect } from 'vitest'
import { temporaryFolder } from '../../main/fixtures/temporary-folder.ts'
import { knownAs } from './known-as.ts'
import { type Launcher, launchers, type OpenedWindow, type WindowWanted } from './launcher.ts'
import { Person } from './person.ts'

/** Where a picture of the window is left when a test of it fails. */
const FAILED = resolve(import.meta.dirname, '../../../out/tests/window')

export interface AtTheBench {
  page: OpenedWindow['page']
  person: Person
  window: OpenedWindow
  home: string
}

export type Session = (wanted: Omit<WindowWanted, 'home'> & { home?: string }, work: Work) => Promise<void>
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
async function sessionIn(
  launcher: Launcher,
  wanted: Omit<WindowWanted, 'home'> & { home?: string },
  work: Work,
): Promise<void> {
  const home = wanted.home ?? (await temporaryFolder())
  if (wanted.isStranger !== true) await knownAs(home, 'A. Rivet')
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
