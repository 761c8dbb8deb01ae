import { mkdir, mkdtemp, realpath, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { LIMITS, type Limits } from '../../../../src/contract/limits.ts'
import { createJob } from '../../../../src/main/services/job-folder/create-job.ts'
import { describeNewJob } from '../../../../src/main/services/job-folder/describe-new-job.ts'
import { Workbench } from '../../../../src/main/services/workbench/workbench.ts'
import { greyDrawing } from '../kinds/drawing.ts'
import { pngFile } from '../kinds/png/png-file.ts'

/** A bench with folders of its own, and jobs to try copies on; needs no test around it. */
export interface FuzzDesk {
  bench: Workbench
  /** Where the bench keeps what is temporary. */
  temporary: string
  /** Opens a new job of one sheet. */
  newJob(): Promise<string>
  /** Closes the bench and removes its folders. */
  close(): Promise<void>
}

/** Seconds after which a scan is given up: less than the usual limit, so that one that hangs is told in time. */
const GIVEN_UP_AFTER = 10

/** @param limits how much is taken in; fewer seconds than a person may set, too */
export async function fuzzDesk(limits: Limits = { ...LIMITS, seconds: GIVEN_UP_AFTER }): Promise<FuzzDesk> {
  const home = await realpath(await mkdtemp(join(tmpdir(), 'scantling-fuzz-')))
  const temporary = join(home, 'temporary')
  const scan = join(home, 'drum.png')
  await mkdir(temporary)
  await writeFile(scan, pngFile(greyDrawing()))
  const bench = new Workbench({
    host: 'local',
    version: '1.2.3',
    log: () => undefined,
    limits,
    places: {
      settings: join(home, 'settings'),
      shelf: join(home, 'shelf'),
      sample: join(home, 'sample'),
      temporary,
    },
  })
  let jobs = 0
  return {
    bench,
    temporary,
    newJob: async () => {
      jobs += 1
      const folder = join(home, `job ${jobs}`)
      await createJob(folder, [scan], (added) => describeNewJob(folder, added, { unit: 'in' }))
      await bench.openFolder(folder)
      return folder
    },
    close: async () => {
      await bench.close()
      await rm(home, { recursive: true, force: true })
    },
  }
}
