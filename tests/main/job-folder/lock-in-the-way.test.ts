import { execFileSync } from 'node:child_process'
import { lstat, mkdir, rm, symlink, truncate, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { stillHeld } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { thisHolder, writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { endedHolder, NOW } from '../fixtures/lock-file.ts'
import { point } from '../fixtures/picked-point.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

/** More than anything takes here that waits for nothing; less than for ever. */
const SOON = 20_000
const MEGABYTE = 1024 ** 2

const mayMakeDevices = process.platform === 'linux' && process.getuid?.() === 0
const hasPipes = process.platform !== 'win32'

const pipe = async (path: string): Promise<void> => void execFileSync('mkfifo', [path])

async function socket(path: string): Promise<void> {
  const server = createServer()
  await new Promise<void>((listening) => server.listen(path, listening))
  onTestFinished(() => void server.close())
}

async function linkToLock(path: string): Promise<void> {
  const other = join(await temporaryFolder(), '.lock')
  await writeFile(other, writeHolder(endedHolder()))
  await symlink(other, path)
}

const THINGS: [what: string, make: (path: string) => Promise<unknown>, canBe: boolean][] = [
  ['a folder', (path) => mkdir(path), true],
  ['a link', (path) => symlink('/dev/zero', path), true],
  ['a link', (path) => symlink('nowhere', path), true],
  ['a link', linkToLock, true],
  ['a named pipe', pipe, hasPipes],
  ['a socket', socket, hasPipes],
  ['a device', async (path) => execFileSync('mknod', [path, 'c', '1', '5']), mayMakeDevices],
]

const CAN_BE = THINGS.filter(([, , canBe]) => canBe)
for (const [what] of THINGS.filter(([, , canBe]) => !canBe)) {
  test.skip(`${what} can't be made here`)
}

/** What is done takes no longer than what waits for nothing, and no memory to speak of. */
async function soon<T>(work: () => Promise<T>): Promise<T> {
  const [before, began] = [process.memoryUsage().rss, performance.now()]
  const done = await work()
  expect(performance.now() - began).toBeLessThan(SOON)
  expect(process.memoryUsage().rss - before).toBeLessThan(200 * MEGABYTE)
  return done
}

describe.each(CAN_BE)('where the lock belongs lies %s', (what, make) => {
  test('which is said with a way out, and left alone; the job is shown meanwhile', async () => {
    const { folder, job } = await workshopJob()
    const path = join(folder, '.lock')
    await make(path)
    const before = await lstat(path)
    const session = await soon(() => openJob(folder, { mode: 'write' }))
    expect(session.job).toEqual(job)
    expect(session.notices.map(inWords)).toEqual([
      `The job ${folder} is open read-only: ${path} is ${what} and no lock, so the job can't be locked; when nobody has it open, remove that and open the job again.`,
    ])
    await session.close()
    expect((await lstat(path)).ino).toBe(before.ino)
    await rm(path, { recursive: true })
    const again = await openJob(folder, { mode: 'write' })
    expect(again.writable).toBe(true)
    await again.close()
  })

  test('or beside it, or for the claim to it: nobody waits for that', async () => {
    const { folder } = await workshopJob()
    await make(join(folder, '.lock.abc'))
    const session = await soon(() => openJob(folder, { mode: 'write' }))
    expect(session.writable).toBe(true)
    await session.close()

    const ended = endedHolder()
    await writeFile(join(folder, '.lock'), writeHolder(ended))
    await make(join(folder, `.lock.after-${ended.token}`))
    const claimed = await soon(() => openJob(folder, { mode: 'write' }))
    expect(claimed.readOnlyBecause).toMatchObject({
      code: 'lock.in-the-way',
      parts: { path: join(folder, `.lock.after-${ended.token}`) },
    })
    await claimed.close()
  })

  test('by now: whoever held the lock finds it gone', async () => {
    const { folder } = await workshopJob()
    const path = join(folder, '.lock')
    const session = await openJob(folder, { mode: 'write' })
    await rm(path)
    await make(path)
    await expect(soon(() => session.edit({ do: 'add-mark', item: point('M5', 1, 2) }, 'AR'))).rejects.toThrow(
      'which keeps others from writing while the job is open here, was removed or replaced',
    )
    await soon(() => session.close())
    await lstat(path)
  })
})

test('a lock file without end is not read to its end', async () => {
  const path = join(await temporaryFolder(), '.lock')
  const holder = thisHolder(NOW)
  await writeFile(path, writeHolder(holder))
  expect(await stillHeld(path, holder)).toBe(true)
  await truncate(path, 2 ** 40).catch(() => truncate(path, 2 ** 30))
  expect(await soon(() => stillHeld(path, holder))).toBe(false)
})
