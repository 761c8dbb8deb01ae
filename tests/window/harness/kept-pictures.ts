import { existsSync } from 'node:fs'
import { cp, mkdir, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import { inject } from 'vitest'
import type { Sheet } from '../../../src/core/job/model/types.ts'
import { readJobFolder } from '../../../src/main/services/job-folder/read-job-folder.ts'
import { cacheFolder } from '../../../src/main/services/job-layout/job-layout.ts'
import { MANIFEST, pictureFolderName } from '../../../src/main/services/pictures/layout/picture-names.ts'
import { Workbench } from '../../../src/main/services/workbench/workbench.ts'
import { temporaryFolder } from '../../main/fixtures/temporary-folder.ts'
import type {} from '../../setup/kept-pictures.ts'

/** Milliseconds that another process may take over the pictures of one sheet, on a machine that does much else. */
const PATIENCE = 60_000

/**
 * Gives a job the pictures of its sheets, so that a window that opens it need not have them made: the first time in a
 * run they are made by a workbench of this process, and kept.
 * @param folder of a job that nobody has open
 */
export async function givePictures(folder: string): Promise<void> {
  const { job } = await readJobFolder(folder)
  for (const { id, scan } of job.sheets) {
    const name = pictureFolderName(scan)
    const own = join(cacheFolder(folder), name)
    if (existsSync(join(own, MANIFEST))) continue
    const source = join(inject('keptPictures'), name)
    await once(source, () => make(folder, id, name, source))
    await cp(source, own, { recursive: true })
  }
}

/** Whoever comes first makes it; the others wait until it is there. */
async function once(path: string, work: () => Promise<void>): Promise<void> {
  const isFirst = await mkdir(`${path}.begun`).then(
    () => true,
    () => false,
  )
  if (isFirst) return work()
  for (const end = Date.now() + PATIENCE; !existsSync(path); await delay(50)) {
    if (Date.now() > end) throw new Error(`${path} was begun, and is not there.`)
  }
}

async function make(folder: string, sheet: Sheet['id'], name: string, to: string): Promise<void> {
  const desk = await temporaryFolder()
  const copy = join(desk, 'job')
  await cp(folder, copy, { recursive: true })
  const place = (of: string): string => join(desk, of)
  const log: string[] = []
  const bench = new Workbench({
    host: 'local',
    version: 'of the tests',
    places: {
      settings: place('settings'),
      shelf: place('shelf'),
      sample: copy,
      temporary: place('temporary'),
    },
    log: (line) => log.push(line),
  })
  try {
    await bench.openFolder(copy)
    const ready = new Promise<void>((resolve, reject) => {
      bench.listen((event) => {
        if (event.kind !== 'pictures' || event.progress.sheet !== sheet) return
        if (event.progress.state === 'ready') resolve()
        if (event.progress.state === 'failed') reject(new Error(event.progress.sentence))
      })
    })
    await bench.ask('show-sheet', { sheet })
    await ready
  } finally {
    await bench.close()
  }
  // Seen by others only when it is whole.
  await cp(join(cacheFolder(copy), name), `${to}.half`, { recursive: true })
  await rename(`${to}.half`, to)
}
