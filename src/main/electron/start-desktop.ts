import { join } from 'node:path'
import { app, type BrowserWindow, session } from 'electron'
import { readPageFiles } from '../services/page/page-files.ts'
import { type Places, workbenchPlaces } from '../services/places/places.ts'
import type { WorkbenchOptions } from '../services/workbench/workbench-options.ts'
import { answerPage } from './answer-page.ts'
import { benchWindow, showPage } from './bench-window.ts'
import { carryMessages } from './carry-messages.ts'
import { closeCleanly } from './close-cleanly.ts'
import type { DesktopWorkbench } from './desktop-workbench.ts'
import { chooseFolder, tellInDialog } from './dialogs.ts'
import { FoldersHandedOver } from './folders-handed-over.ts'
import { type Given, givenFrom } from './given.ts'
import { guardContents } from './guard-contents.ts'
import { guardSession } from './guard-session.ts'
import { inWords } from './in-words.ts'
import type { Log } from './log.ts'
import { keepMenu, menuState } from './menu/keep-menu.ts'
import { menuActions } from './menu/menu-actions.ts'
import { SCHEME } from './own-address.ts'
import { recoverPage } from './recover-page.ts'
import { registerScheme } from './register-scheme.ts'
import { ScanPieces } from './scan-pieces.ts'

export interface DesktopOptions {
  /** The folder of the program itself: `out/` and `samples/` are below it. */
  root: string
  version: string
  places: Places
  given: Given
  log: Log
  makeWorkbench: (options: WorkbenchOptions) => DesktopWorkbench
}

/** Starts the desktop host; resolves when its window shows the page, or at once when another instance has it. */
export async function startDesktop(options: DesktopOptions): Promise<void> {
  const { places, given, log } = options
  app.setName('Scantling')
  // Before the lock: one instance for each folder of settings.
  app.setPath('userData', join(places.settings, 'desktop'))
  app.enableSandbox()
  if (!app.requestSingleInstanceLock(given)) {
    app.quit()
    return
  }
  registerScheme()
  app.on('web-contents-created', (_event, contents) => guardContents(contents, log))
  app.on('window-all-closed', () => app.quit())
  const handedOver = new FoldersHandedOver()
  await app.whenReady()
  await openBench(options, handedOver)
}

async function openBench(
  { root, version, places, given, log, makeWorkbench }: DesktopOptions,
  handedOver: FoldersHandedOver,
): Promise<void> {
  const files = await readPageFiles(join(root, 'out', 'renderer'))
  const ownSession = session.fromPartition('persist:bench')
  guardSession(ownSession, log)
  const window = benchWindow(ownSession, join(root, 'out', 'preload', 'index.cjs'))
  const workbench = makeWorkbench({
    host: 'electron',
    version,
    places: workbenchPlaces(places, root),
    chooseJobFolder: () => chooseFolder(window),
    folderOpened: (folder) => app.addRecentDocument(folder),
    log,
  })
  const scans = new ScanPieces((name, bytes) => workbench.receiveScan(name, bytes))
  ownSession.protocol.handle(SCHEME, (request) => answerPage(request, { files, workbench, scans, log }))
  const carried = carryMessages(window, workbench, log)
  recoverPage(window, () => scans.abandonAll(), log)
  closeCleanly(window, async () => {
    scans.abandonAll()
    await workbench.close()
  })
  const open = (what: Given): Promise<void> => openGiven(what, window, workbench)
  app.on('second-instance', (_event, _argv, _from, data) => {
    bringForward(window)
    void open(givenFrom(data))
  })
  handedOver.takenBy((folder) => void open({ folder, sample: false }))
  await open(given)
  const state = await workbench.ask('look', {})
  const start = state.ok && state.answer !== null && 'recent' in state.answer ? state.answer : NOTHING
  const kept = keepMenu(
    menuState(start),
    menuActions(window, workbench, (sentence) => void tellInDialog(window, sentence)),
    (heard) => workbench.listen(heard),
  )
  window.once('closed', () => {
    carried()
    kept()
  })
  await showPage(window)
}

const NOTHING = { recent: [], opened: null }

async function openGiven(
  { folder, sample }: Given,
  window: BrowserWindow,
  workbench: DesktopWorkbench,
): Promise<void> {
  try {
    if (folder !== undefined) {
      await workbench.openFolder(folder)
    } else if (sample) {
      await workbench.openSample()
    }
  } catch (error) {
    await tellInDialog(window, inWords(error))
  }
}

function bringForward(window: BrowserWindow): void {
  if (window.isDestroyed()) return
  if (window.isMinimized()) window.restore()
  window.show()
  window.focus()
}
