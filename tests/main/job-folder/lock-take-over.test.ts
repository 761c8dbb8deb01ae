import { cp, readdir, rename, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { JobSession } from '../../../src/main/services/job-folder/job-session.ts'
import { folderNumbers } from '../../../src/main/services/job-folder/lock/folder-numbers.ts'
import {
  type LockHolder,
  thisHolder,
  writeHolder,
} from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { offeredTakeOver } from '../../../src/main/services/job-folder/lock/offered-take-over.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import {
  MACHINES_OWN_NAMESPACE,
  pidNamespace,
  thisBoot,
} from '../../../src/main/services/machine/this-boot.ts'
import { thisMachine } from '../../../src/main/services/machine/this-machine.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { endedHolder, holderElsewhere, holderIn, NOW } from '../fixtures/lock-file.ts'
import { point } from '../fixtures/picked-point.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const mark = (id: string) => ({ do: 'add-mark' as const, item: point(id, 1, 2) })

const sentences = ({ notices }: JobSession): string[] => notices.map(inWords)

/** A job whose lock says this. */
async function jobLockedBy(lock: string): Promise<{ folder: string; path: string }> {
  const { folder } = await workshopJob()
  const path = join(folder, '.lock')
  await writeFile(path, lock)
  return { folder, path }
}

/** What a person is offered who opens a job for writing. */
async function offeredIn(folder: string): Promise<string | undefined> {
  const session = await openJob(folder, { mode: 'write' })
  await session.close()
  return offeredTakeOver(session.readOnlyBecause)?.takeOver
}

async function writesWith(folder: string, takeOver: string | undefined): Promise<JobSession> {
  const session = await openJob(folder, { mode: 'write', takeOver })
  expect(session.writable).toBe(true)
  return session
}

describe('a lock that nobody here can give back', () => {
  test('is said to be that, and is taken over by who was told of it and wants it, and that is said too', async () => {
    const holder = holderElsewhere()
    const { folder, path } = await jobLockedBy(writeHolder(holder))
    const reader = await openJob(folder, { mode: 'write' })
    expect(reader.writable).toBe(false)
    const who = `rivet on bench-2.invalid (process ${process.pid}) since `
    expect(sentences(reader)[0]).toContain(`it is open for writing by ${who}`)
    expect(sentences(reader)[0]).toMatch(
      /ask them to close it, and take the lock over only when nobody can\.$/,
    )
    await reader.close()
    expect(await holderIn(path)).toEqual(holder)

    const session = await writesWith(folder, offeredTakeOver(reader.readOnlyBecause)?.takeOver)
    expect(sentences(session)).toEqual([
      expect.stringMatching(
        /^The lock of rivet on bench-2\.invalid .+ was taken over, as was asked; if they are still at work, what they do after this is not kept here\.$/,
      ),
    ])
    await session.edit(mark('M5'), 'AR')
    await session.close()
    expect((await readdir(folder)).filter((name) => name.startsWith('.lock'))).toEqual([])
  })

  test.each([
    ['empty', ''],
    ['of a later version', '{"form":2}'],
    ['cut off', writeHolder(holderElsewhere()).slice(0, 80)],
  ])('also one that is %s', async (_, text) => {
    const { folder } = await jobLockedBy(text)
    const session = await writesWith(folder, await offeredIn(folder))
    expect(sentences(session)[0]).toMatch(/^The lock of somebody unknown .+ was taken over, as was asked;/)
    await session.close()
  })

  test('and a claim to it that nobody can give back either', async () => {
    const left = holderElsewhere()
    const claimant = { ...holderElsewhere(), token: thisHolder(NOW).token, user: 'forge' }
    const { folder, path } = await jobLockedBy(writeHolder(left))
    await writeFile(`${path}.after-${left.token}`, writeHolder(claimant))
    expect(await offeredIn(folder)).toBe(left.token)
    const reader = await openJob(folder, { mode: 'write', takeOver: left.token })
    expect(offeredTakeOver(reader.readOnlyBecause)).toMatchObject({ holder: { user: 'forge' } })
    await reader.close()
    const session = await writesWith(folder, offeredTakeOver(reader.readOnlyBecause)?.takeOver)
    await session.close()
    expect((await readdir(folder)).filter((name) => name.startsWith('.lock'))).toEqual([])
  })

  test('is not taken over in place of another that was taken meanwhile', async () => {
    const { folder, path } = await jobLockedBy(writeHolder(holderElsewhere()))
    const told = await offeredIn(folder)
    const anew: LockHolder = { ...holderElsewhere(), token: thisHolder(NOW).token }
    await writeFile(path, writeHolder(anew))
    const session = await openJob(folder, { mode: 'write', takeOver: told })
    expect(session.writable).toBe(false)
    expect(offeredTakeOver(session.readOnlyBecause)?.takeOver).toBe(anew.token)
    await session.close()
    expect(await holderIn(path)).toEqual(anew)
  })

  test('is not the same any more when it was written anew, though it can not be read either time', async () => {
    const { folder, path } = await jobLockedBy('')
    const told = await offeredIn(folder)
    const at = new Date(Date.now() + 2000)
    await utimes(path, at, at)
    const session = await openJob(folder, { mode: 'write', takeOver: told })
    expect(session.writable).toBe(false)
    await session.close()
  })

  test('need not be taken over once it was given back', async () => {
    const { folder } = await workshopJob()
    const session = await writesWith(folder, holderElsewhere().token)
    expect(session.notices).toEqual([])
    await session.close()
  })
})

test.runIf(process.platform === 'linux')(
  'a lock of somebody who is at work on this machine is not taken over, whatever is asked',
  async () => {
    const { folder } = await workshopJob()
    const writer = await openJob(folder, { mode: 'write' })
    const token = (await holderIn(join(folder, '.lock')))?.token
    expect(token).toBeDefined()
    const other = await openJob(folder, { mode: 'write', takeOver: token })
    expect(other.writable).toBe(false)
    expect(offeredTakeOver(other.readOnlyBecause)).toBeUndefined()
    expect(inWords(other.readOnlyBecause ?? { code: '', parts: {} })).toMatch(
      /; they are at work on this machine; ask them to close it\.$/,
    )
    await writer.edit(mark('M5'), 'AR')
    await writer.close()
    await other.close()
  },
)

test('whoever is at work elsewhere when the lock is taken over finds it gone at the next edit, and nothing is written twice', async () => {
  const { folder } = await workshopJob()
  const path = join(folder, '.lock')
  const writer = await openJob(folder, { mode: 'write' })
  await writer.edit(mark('M5'), 'AR')
  // As it stands there for a machine that sees the folder by a share.
  const holder = { ...(await holderIn(path)), host: 'bench-2.invalid', machine: 'another', boot: 'another' }
  await writeFile(path, JSON.stringify(holder))
  const session = await writesWith(folder, await offeredIn(folder))
  await expect(writer.edit(mark('M6'), 'AR')).rejects.toThrow(
    'which keeps others from writing while the job is open here, was removed or replaced',
  )
  expect(writer.writable).toBe(false)
  await writer.close()
  await session.edit(mark('M6'), 'AR')
  await session.close()
  const again = await openJob(folder, { mode: 'read' })
  expect(again.job.marks.map(({ id }) => id).slice(-2)).toEqual(['M5', 'M6'])
})

const here = await folderNumbers(await temporaryFolder())
const onOwnDisk = here !== undefined && thisBoot() !== undefined
const outsideContainers = thisMachine() !== undefined && pidNamespace() === MACHINES_OWN_NAMESPACE
if (!onOwnDisk) process.stdout.write('Locks in copies: skipped, for folders have no lasting numbers here.\n')
if (!outsideContainers) process.stdout.write('Locks of earlier boots: skipped, for this is a container.\n')

describe.skipIf(!onOwnDisk)('a folder that was copied while it was open', () => {
  test('is not locked by the lock that came along, though its holder is at work; the original stays locked', async () => {
    const { folder } = await workshopJob()
    const writer = await openJob(folder, { mode: 'write' })
    await writer.edit(mark('M5'), 'AR')
    const copy = join(await temporaryFolder(), 'copy')
    await cp(folder, copy, { recursive: true, preserveTimestamps: true })
    const session = await openJob(copy, { mode: 'write' })
    expect(session.writable).toBe(true)
    expect(sentences(session)).toEqual([
      expect.stringMatching(
        /^This folder is a copy of one that was open at the time, by .+; the lock that came along was set aside,/,
      ),
    ])
    await session.edit(mark('M6'), 'AR')
    await writer.edit(mark('M6'), 'AR')
    expect((await openJob(folder, { mode: 'write' })).writable).toBe(false)
    await session.close()
    await writer.close()
  })

  test('is told from one that was only given another name', async () => {
    const { folder } = await workshopJob()
    const holder = thisHolder(NOW, await folderNumbers(folder))
    await writeFile(join(folder, '.lock'), writeHolder(holder))
    const renamed = `${folder}-renamed`
    await rename(folder, renamed)
    const session = await openJob(renamed, { mode: 'write' })
    expect(session.readOnlyBecause).toMatchObject({ code: 'lock.held' })
    await session.close()
    await rename(renamed, folder)
  })
})

describe.skipIf(!outsideContainers)('a lock of this machine', () => {
  test('from before it was started again is taken over, under whatever name it went then', async () => {
    for (const host of [thisHolder(NOW).host, 'old-name.invalid']) {
      const { folder } = await workshopJob()
      const numbers = await folderNumbers(folder)
      if (host.endsWith('.invalid') && numbers === undefined) continue
      const holder = { ...thisHolder(NOW, numbers), host, boot: 'the boot before' }
      await writeFile(join(folder, '.lock'), writeHolder(holder))
      const session = await writesWith(folder, undefined)
      expect(sentences(session)).toEqual([
        expect.stringMatching(
          /^The job was left open by .+, before this machine was started again; its lock was taken over/,
        ),
      ])
      await session.close()
    }
  })

  test('whose process has ended is taken over though the machine was renamed meanwhile', async () => {
    const { folder } = await workshopJob()
    const holder = { ...endedHolder(), host: 'old-name.invalid' }
    await writeFile(join(folder, '.lock'), writeHolder(holder))
    const session = await writesWith(folder, undefined)
    expect(sentences(session)[0]).toContain('on old-name.invalid')
    await session.close()
  })
})

test('a lock that says neither boot nor namespace, as was written before, can be given up all the same', async () => {
  const { token, pid, host, user, start, since } = endedHolder()
  const said = { token, pid, host, user, ...(start === undefined ? {} : { start }), since }
  const { folder, path } = await jobLockedBy(JSON.stringify(said))
  expect(await holderIn(path)).toEqual(said)
  const session = await writesWith(folder, token)
  await session.close()
})
