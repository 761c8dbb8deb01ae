import { join, resolve } from 'node:path'
import { version } from '../../../package.json'
import { type LocalHost, serve } from '../local/serve.ts'
import { readJobFolder } from '../services/job-folder/read-job-folder.ts'
import { placesFor, workbenchPlaces } from '../services/places/places.ts'
import { Workbench } from '../services/workbench/workbench.ts'
import { openBrowserWindow } from './browser-window.ts'
import { browsers } from './browsers.ts'
import { openDesktopWindow } from './desktop-window.ts'
import { electronRuntime } from './electron-runtime.ts'
import { fetchElectron } from './fetch-electron.ts'
import { projectFolder } from './project-folder.ts'
import { type LaunchSurroundings, thisMachine } from './surroundings.ts'
import { whyNoWindow } from './why-no-window.ts'

/** What is opened: a job folder, the practice copy of the sample, or the start page. */
export type Opens = { folder: string } | 'sample' | 'start'

export interface LaunchOptions {
  opens: Opens
  /** Opens no window and gives the address only. */
  addressOnly: boolean
  /** A sentence for the person: which window is opened, and why. */
  say: (sentence: string) => void
  /** The address of the workbench, where no window could be opened. */
  giveAddress: (address: string) => void
  /** One line for each request that is refused or that failed. */
  log: (line: string) => void
  surroundings?: LaunchSurroundings
  /** Milliseconds from the end of the last window until the workbench ends; without it, those of the local host. */
  linger?: number
}

/**
 * Opens the workbench and returns when it is closed: in Electron where its runtime is there or can be had, else in
 * an application window of an installed browser, else at an address that a person opens. Says which, and why.
 * @throws ServiceError when the job can't be opened, before any window is
 */
export async function launch(options: LaunchOptions): Promise<void> {
  const { opens, say, surroundings = thisMachine() } = options
  const folder = typeof opens === 'object' ? resolve(opens.folder) : undefined
  if (folder !== undefined) await readJobFolder(folder)
  if (options.addressOnly || surroundings.env['SCANTLING_WINDOW'] === 'none') {
    await openLocally(options, folder, surroundings, undefined)
    return
  }
  const none = whyNoWindow(surroundings)
  const why = none ?? (await openInElectron(opens, folder, surroundings, say))
  if (why !== undefined)
    await openLocally(options, folder, surroundings, { why, windows: none === undefined })
}

/** @returns undefined when the window was opened and is closed again; else why it was not */
async function openInElectron(
  opens: Opens,
  folder: string | undefined,
  surroundings: LaunchSurroundings,
  say: (sentence: string) => void,
): Promise<string | undefined> {
  const missing =
    electronRuntime(surroundings) === undefined ? await fetchElectron(surroundings, say) : undefined
  if (missing !== undefined) return missing
  const runtime = electronRuntime(surroundings)
  if (runtime === undefined) return 'the Electron runtime is not there, although its download went well'
  say('Opening the workbench in its desktop window, because the Electron runtime is there.')
  const program = join(projectFolder(), 'out', 'main', 'electron.js')
  const what = folder ?? (opens === 'sample' ? '--sample' : undefined)
  return await openDesktopWindow(runtime, what === undefined ? [program] : [program, what], surroundings)
}

async function openLocally(
  { opens, say, giveAddress, log, linger }: LaunchOptions,
  folder: string | undefined,
  surroundings: LaunchSurroundings,
  window: { why: string; windows: boolean } | undefined,
): Promise<void> {
  const project = projectFolder()
  const places = placesFor(surroundings)
  const workbench = new Workbench({
    host: 'local',
    version,
    places: workbenchPlaces(places, project),
    log,
  })
  let host: LocalHost
  try {
    if (folder !== undefined) await workbench.openFolder(folder)
    else if (opens === 'sample') await workbench.openSample()
    host = await serve({ workbench, page: join(project, 'out', 'renderer'), log, linger })
  } catch (error) {
    // Why it could not be served is what a person is told.
    await workbench.close().catch(() => undefined)
    throw error
  }
  closeOnSignals(host)
  if (window === undefined) giveAddress(host.newAddress())
  else await showLocally(host, window, places.settings, surroundings, say, giveAddress)
  await host.ended
}

/** Lets the first interrupt or request to end close the job, saved; a second one ends the process as it is. */
function closeOnSignals({ close, ended }: Pick<LocalHost, 'close' | 'ended'>): void {
  const end = (): void => {
    forget()
    void close().catch(() => undefined)
  }
  const forget = (): void => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.off(signal, end)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end)
  ended.then(forget, forget)
}

async function showLocally(
  host: LocalHost,
  { why, windows }: { why: string; windows: boolean },
  settings: string,
  surroundings: LaunchSurroundings,
  say: (sentence: string) => void,
  giveAddress: (address: string) => void,
): Promise<void> {
  const reasons = [why]
  const installed = windows ? browsers(surroundings, settings) : []
  for (const browser of installed) {
    say(`Opening the workbench in a window of ${browser.name}, because ${reasons.join(', and ')}.`)
    const problem = await openBrowserWindow(browser, host, surroundings)
    if (problem === undefined) return
    reasons.push(problem)
  }
  if (windows && installed.length === 0) reasons.push('no Chrome, Edge or Chromium was found')
  say(`No window was opened, because ${reasons.join(', and ')}.`)
  say(
    'The workbench is open at this address, which lets one browser on this machine in, once; Ctrl+C ends it.',
  )
  giveAddress(host.newAddress())
}
