import { homedir } from 'node:os'
import { resolve } from 'node:path'
import { app, dialog } from 'electron'
import { version } from '../../../package.json'
import { placesFor } from '../services/places/places.ts'
import { Workbench } from '../services/workbench/workbench.ts'
import { readGiven } from './given.ts'
import { inWords } from './in-words.ts'
import { logLine } from './log.ts'
import { startDesktop } from './start-desktop.ts'

const args = process.argv.slice(app.isPackaged ? 1 : 2)

startDesktop({
  // Built, this file is out/main/electron.js.
  root: resolve(import.meta.dirname, '..', '..'),
  version,
  places: placesFor({ platform: process.platform, env: process.env, home: homedir() }),
  given: readGiven(args, process.cwd()),
  log: (what, subject) => console.error(logLine(what, subject)),
  makeWorkbench: (options) => new Workbench(options),
}).catch((error: unknown) => {
  console.error(logLine(inWords(error)))
  dialog.showErrorBox('Scantling can’t start', inWords(error))
  app.exit(2)
})
