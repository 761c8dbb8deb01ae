import type { open } from 'node:fs/promises'
import { mkdir, readdir, readFile, stat, utimes, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { acquireLock } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { thisHolder, writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { bootedAt } from '../../../src/main/services/machine/this-boot.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { endedHolder, holderElsewhere, holderIn, NOW } from '../fixtures/lock-file.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

/** What was done with files, in order: `write`, `sync`, `link`, `rename`, `remove`, and the name. */
let done: string[] = []
/** What fails from now on, as it would be written there, and how. */
let failing: { step: RegExp; code: string } | undefined

function mayFail(step: string): void {
  if (failing?.step.test(step)) throw Object.assign(new Error(failing.code), { code: failing.code })
}

function doing(step: string): void {
  done.push(step)
  mayFail(step)
}

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>()
  const watched: typeof open = async (path, ...rest) => {
    const name = basename(String(path))
    mayFail(`open ${name}`)
    const handle = await real.open(path, ...rest)
    const { writeFile, sync } = handle
    handle.writeFile = async (...text) => {
      doing(`write ${name}`)
      await writeFile.apply(handle, text)
    }
    handle.sync = async () => {
      doing(`sync ${name}`)
      await sync.call(handle)
    }
    return handle
  }
  const named =
    <A extends unknown[]>(what: string, step: (...paths: A) => Promise<void>) =>
    async (...paths: A) => {
      doing(`${what} ${paths.map((path) => basename(String(path))).join(' ')}`)
      await step(...paths)
    }
  return {
    ...real,
    open: watched,
    link: named('link', real.link),
    rename: named('rename', real.rename),
    unlink: named('remove', real.unlink),
  }
})

afterEach(() => {
  done = []
  failing = undefined
})

/** Before this machine was started. */
const earlier = (): Date => new Date(bootedAt() - 60_000)

describe('a lock comes to disk', () => {
  test('whole before it has its name, and with its name before it is held', async () => {
    const folder = await temporaryFolder()
    const holder = thisHolder(NOW)
    await acquireLock(join(folder, '.lock'), holder)
    const beside = `.lock.${holder.token}.tmp`
    expect(done).toEqual([
      `write ${beside}`,
      `sync ${beside}`,
      `link ${beside} .lock`,
      `remove ${beside}`,
      `sync ${basename(folder)}`,
    ])
  })

  test('also where it takes the place of another', async () => {
    const folder = await temporaryFolder()
    const path = join(folder, '.lock')
    const ended = endedHolder()
    await writeFile(path, writeHolder(ended))
    await acquireLock(path, thisHolder(NOW))
    expect(done.slice(-2)).toEqual([`rename .lock.after-${ended.token} .lock`, `sync ${basename(folder)}`])
    expect(done.filter((step) => step.startsWith('sync .lock.'))).toHaveLength(1)
  })

  test('where there are no hard links: filled under its own name', async () => {
    const folder = await temporaryFolder()
    failing = { step: /^link/, code: 'EPERM' }
    const holder = thisHolder(NOW)
    expect(await acquireLock(join(folder, '.lock'), holder)).toEqual({ kind: 'acquired' })
    expect(done.slice(-3)).toEqual(['write .lock', 'sync .lock', `sync ${basename(folder)}`])
    expect(await holderIn(join(folder, '.lock'))).toEqual(holder)
    expect(await readdir(folder)).toEqual(['.lock'])
  })

  test.each([
    ['written', /^write \.lock/, 'ENOSPC'],
    ['brought to disk', /^sync \.lock/, 'EIO'],
    ['brought to disk by its name', /^sync scantling-/, 'EIO'],
  ])('and where it can not be %s, nothing of it is left in anybody’s way', async (_, step, code) => {
    const folder = await temporaryFolder()
    for (const links of [true, false]) {
      failing = { step: links ? step : new RegExp(`${step.source}|^link`), code: links ? code : 'EPERM' }
      await expect(acquireLock(join(folder, '.lock'), thisHolder(NOW))).rejects.toThrow(/ENOSPC|EIO|EPERM/)
      expect(await readdir(folder)).toEqual([])
    }
  })

  test('and where it can not be removed, the sentence says that and why', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    failing = { step: /^remove \.lock$/, code: 'EIO' }
    await expect(session.close()).rejects.toThrow(
      /^The job is closed, but its lock .+ can't be removed because the disk reports an error; once this program has ended,/,
    )
  })
})

test('where neither the job can be saved nor its lock be removed, what is said is the first of the two', async () => {
  const { folder } = await workshopJob()
  const session = await openJob(folder, { mode: 'write' })
  await session.edit({ do: 'describe', set: { title: 'Drum, rebuilt' } }, 'AR')
  failing = { step: /^(?:write job\.json\.|remove \.lock$)/, code: 'EIO' }
  await expect(session.close()).rejects.toThrow(
    /job\.json could not be written because the disk reports an error/,
  )
})

test('a lock that can not be read is said to be that, and the job is shown', async () => {
  const { folder, job } = await workshopJob()
  const path = join(folder, '.lock')
  await writeFile(path, writeHolder(endedHolder()))
  failing = { step: /^open \.lock$/, code: 'EACCES' }
  const session = await openJob(folder, { mode: 'write' })
  expect(session.job).toEqual(job)
  expect(session.notices.map(inWords)).toEqual([
    `The job ${folder} is open read-only: it can't be seen whether somebody has it open, for ${path} can't be read because permission is refused; put that right and open it again.`,
  ])
  await session.close()
})

const LEFT: [what: string, left: Buffer | string][] = [
  ['empty', ''],
  ['all zeros', Buffer.alloc(300)],
  [
    'zeros after a beginning',
    Buffer.concat([Buffer.from(writeHolder(holderElsewhere()).slice(0, 100)), Buffer.alloc(200)]),
  ],
  ['cut off', writeHolder(holderElsewhere()).slice(0, 150)],
  ['of another file', Buffer.from([0xff, 0xfe, 0x00, 0x13, 0x37])],
  ['a page of zeros', Buffer.alloc(4096)],
  ['longer than a lock is', Buffer.alloc(100_000, 'x')],
]

describe('after a power cut', () => {
  test.each(LEFT)(
    'a lock that is %s, from before this machine was started, is dead, and that is said',
    async (_, left) => {
      const { folder } = await workshopJob()
      const path = join(folder, '.lock')
      await writeFile(path, left)
      await utimes(path, earlier(), earlier())
      const session = await openJob(folder, { mode: 'write' })
      expect(session.writable).toBe(true)
      expect(session.notices.map(inWords)).toEqual([
        `${path} was damaged and from before this machine was started, as a power cut leaves it; the lock was taken over and the acknowledged edits are here.`,
      ])
      await session.close()
    },
  )

  test.each(LEFT.slice(0, 3))(
    'one that is %s, from since, may be of somebody who is at work',
    async (_, left) => {
      const path = join(await temporaryFolder(), '.lock')
      await writeFile(path, left)
      const at = new Date(bootedAt() + 1000)
      await utimes(path, at, at)
      const { mtimeMs } = await stat(path)
      expect(await acquireLock(path, thisHolder(NOW))).toMatchObject({ kind: 'held', holder: undefined })
      expect(await readFile(path)).toEqual(Buffer.from(left))
      expect((await stat(path)).mtimeMs).toBe(mtimeMs)
    },
  )

  test('one that says something whole in another form may be of a later version, however old it is', async () => {
    const path = join(await temporaryFolder(), '.lock')
    await writeFile(path, '{"holds":"0123","form":2}\n')
    await utimes(path, earlier(), earlier())
    expect(await acquireLock(path, thisHolder(NOW))).toMatchObject({ kind: 'held', holder: undefined })
  })

  test.each([
    ['beside it', (_: string) => `.lock.${'0'.repeat(24)}.tmp`],
    ['claimed', (token: string) => `.lock.after-${token}`],
  ])('a half-written lock %s is in nobody’s way', async (_, name) => {
    const { folder } = await workshopJob()
    const ended = endedHolder()
    await writeFile(join(folder, '.lock'), writeHolder(ended))
    const half = join(folder, name(ended.token))
    await writeFile(half, '')
    await utimes(half, earlier(), earlier())
    const session = await openJob(folder, { mode: 'write' })
    expect(session.writable).toBe(true)
    expect((await readdir(folder)).filter((one) => one.startsWith('.lock'))).toEqual(['.lock'])
    await session.close()
  })

  test('what lies beside a lock and is none stays, and nobody waits for it', async () => {
    const { folder } = await workshopJob()
    await mkdir(join(folder, '.lock.folder'))
    await writeFile(join(folder, '.lock.elsewhere.tmp'), writeHolder(holderElsewhere()))
    const session = await openJob(folder, { mode: 'write' })
    await session.close()
    expect((await readdir(folder)).filter((one) => one.startsWith('.lock'))).toEqual([
      '.lock.elsewhere.tmp',
      '.lock.folder',
    ])
  })
})
