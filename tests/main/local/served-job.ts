import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { type LocalHost, type LocalHostOptions, serve } from '../../../src/main/local/serve.ts'
import { Workbench } from '../../../src/main/services/workbench/workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'
import { pageFolder } from './page-folder.ts'

export interface ServedJob {
  host: LocalHost
  workbench: Workbench
  /** The job folder. */
  folder: string
  /** What the program keeps and makes lies below this folder. */
  home: string
  /** Uploads on their way lie below this one. */
  temporary: string
  /** Every line that was logged, by the host or the workbench. */
  lines: string[]
}

/** The real workbench with a small job open, served by the real host. */
export async function servedJob(options: Partial<LocalHostOptions> = {}): Promise<ServedJob> {
  const { folder } = await workshopJob()
  const home = await temporaryFolder()
  const temporary = join(home, 'temporary')
  const lines: string[] = []
  const log = (line: string): number => lines.push(line)
  await mkdir(join(home, 'settings'))
  await writeFile(join(home, 'secret.txt'), 'FROM OUTSIDE')
  const workbench = new Workbench({
    host: 'local',
    version: '0.0.0',
    places: { settings: join(home, 'settings'), shelf: join(home, 'shelf'), sample: folder, temporary },
    log,
  })
  await workbench.openFolder(folder)
  const host = await serve({ workbench, page: await pageFolder(), log, ...options })
  return { host, workbench, folder, home, temporary, lines }
}
