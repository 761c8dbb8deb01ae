import { cp, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { ScantlingError } from '../../../src/core/words/scantling-error.ts'
import { readJobFolder } from '../../../src/main/services/job-folder/read-job-folder.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

it('a job that is moved while it is read is refused in words, never a fault', async () => {
  const home = await temporaryFolder()
  const [here, there] = [join(home, 'here'), join(home, 'there')]
  await cp((await workshopJob()).folder, here, { recursive: true })
  let refused = 0
  for (let look = 0; look < 400; look++) {
    const reading = readJobFolder(here).catch((error: unknown) => {
      expect(error).toBeInstanceOf(ScantlingError)
      refused++
    })
    // Moved at another moment each time, spread over what a reading takes.
    await new Promise((moved) => setTimeout(moved, (look % 8) * 0.7))
    await rename(here, there)
    await reading
    await rename(there, here)
  }
  expect(refused).toBeGreaterThan(0)
})
