import { spawn, spawnSync } from 'node:child_process'
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { acquireLock, releaseLock } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { holderIsDead } from '../../../src/main/services/job-folder/lock/holder-is-dead.ts'
import {
  type LockHolder,
  readHolder,
  thisHolder,
  writeHolder,
} from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { processStart } from '../../../src/main/services/machine/process-start.ts'
import { holderInWords } from '../../../src/main/services/words/holder-in-words.ts'
import { type BundledProgram, bundleProgram } from '../fixtures/bundle-program.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const NOW = new Date('2026-03-01T08:00:00Z')
const linux = process.platform === 'linux'

let ended: number | undefined

function deadPid(): number {
  ended ??= spawnSync(process.execPath, ['-e', '']).pid
  return ended
}

const deadHolder = (): LockHolder => ({ ...thisHolder(NOW), pid: deadPid(), start: 'another boot:1' })

let racer: BundledProgram
beforeAll(async () => {
  racer = await bundleProgram('tests/main/fixtures/lock-racer.ts', true)
})
afterAll(() => racer.remove())

/** Processes that try for each of the paths at the same moment; what they say of it, once all have tried all. */
async function raceTogether(racers: number, paths: readonly string[]): Promise<string[]> {
  const children = Array.from({ length: racers }, () =>
    spawn(process.execPath, [racer.path, 'rounds', ...paths], { stdio: ['pipe', 'pipe', 'inherit'] }),
  )
  const outputs = children.map(() => '')
  const whenAll = (word: string): Promise<unknown> =>
    Promise.all(
      children.map(
        (child, i) =>
          new Promise<void>((resolve, reject) => {
            const look = (): void => {
              if (outputs[i]?.includes(`${word}\n`)) resolve()
            }
            child.stdout.on('data', look)
            child.on('close', () => reject(new Error(`A racer ended before it was ${word}.`)))
            look()
          }),
      ),
    )
  for (const [i, child] of children.entries()) {
    child.stdout.on('data', (data: Buffer) => {
      outputs[i] += data.toString()
    })
  }
  await whenAll('ready')
  const tried = whenAll('tried')
  const start = Date.now() + 200
  for (const child of children) child.stdin.write(`${start}\n`)
  await tried
  for (const child of children) child.stdin.end()
  return outputs.flatMap((output) => output.split('\n').filter((line) => /^\d/.test(line)))
}

function race(args: readonly string[]): Promise<string> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [racer.path, ...args], { stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    child.stdout.on('data', (data: Buffer) => {
      output += data.toString()
    })
    child.stderr.on('data', (data: Buffer) => {
      output += data.toString()
    })
    child.on('close', () => resolve(output))
  })
}

describe('a folder open for writing is locked', () => {
  test('the first opener gets the lock and the second is told who holds it and since when', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const first = thisHolder(NOW)
    expect(await acquireLock(path, first)).toEqual({ kind: 'acquired' })
    expect(await acquireLock(path, thisHolder(new Date()))).toEqual({ kind: 'held', holder: first })
  })

  test('who holds it is told with the day and the time by this machine’s clock', () => {
    const since = new Date(2026, 10, 25, 14, 2, 59).toISOString()
    expect(holderInWords({ ...thisHolder(NOW), user: 'rivet', host: 'bench-2', pid: 4711, since })).toBe(
      'rivet on bench-2 (process 4711) since 25 November 2026, 14:02',
    )
    expect(holderInWords({ ...thisHolder(NOW), since: 'yesterday' })).toMatch(/ since yesterday$/)
  })

  test('a lock given back can be taken again, and leaves nothing behind', async () => {
    const folder = await temporaryFolder()
    const path = join(folder, '.lock')
    const holder = thisHolder(NOW)
    await acquireLock(path, holder)
    await releaseLock(path, holder)
    expect(await readdir(folder)).toEqual([])
    expect((await acquireLock(path, thisHolder(NOW))).kind).toBe('acquired')
  })

  test("giving a lock back leaves somebody else's lock alone", async () => {
    const path = join(await temporaryFolder(), '.lock')
    const other = thisHolder(NOW)
    await writeFile(path, writeHolder(other))
    await releaseLock(path, thisHolder(NOW))
    expect(readHolder(await readFile(path, 'utf8'))).toEqual(other)
  })

  test('a lock of a process that has ended is taken over, and it is said whose it was', async () => {
    const folder = await temporaryFolder()
    const path = join(folder, '.lock')
    const dead = deadHolder()
    await writeFile(path, writeHolder(dead))
    const mine = thisHolder(NOW)
    expect(await acquireLock(path, mine)).toEqual({ kind: 'acquired', takenOverFrom: dead })
    expect(readHolder(await readFile(path, 'utf8'))).toEqual(mine)
    expect(await readdir(folder)).toEqual(['.lock'])
  })

  test.runIf(linux)('a pid that belongs to another process by now does not keep the lock', () => {
    const start = processStart(process.pid)
    expect(start).toMatch(/:\d+$/)
    expect(holderIsDead({ ...thisHolder(NOW), start: `${start}0` })).toBe(true)
    expect(holderIsDead(thisHolder(NOW))).toBe(false)
  })

  test('a lock from another host is never taken over by itself', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const abroad: LockHolder = { ...deadHolder(), host: 'bench-2.invalid' }
    await writeFile(path, writeHolder(abroad))
    expect(await acquireLock(path, thisHolder(NOW))).toEqual({ kind: 'held', holder: abroad })
    const namesake: LockHolder = { ...deadHolder(), machine: 'another machine of the same name' }
    if (thisHolder(NOW).machine !== undefined) expect(holderIsDead(namesake)).toBe(false)
  })

  test.each([
    ['empty', ''],
    ['half written', '{"token":"00'],
    ['of another program', '4711\n'],
    ['without a pid', JSON.stringify({ ...thisHolder(NOW), pid: 'x' })],
  ])('a lock file that is %s counts as held by somebody unknown', async (_, text) => {
    const path = join(await temporaryFolder(), '.lock')
    await writeFile(path, text)
    expect(await acquireLock(path, thisHolder(NOW))).toEqual({ kind: 'held', holder: undefined })
    expect(await readFile(path, 'utf8')).toBe(text)
  })
})

describe('when many processes try for one lock at once', () => {
  const RACERS = 10

  test('exactly one wins, whether the lock is free, left by a dead process, or left half taken over', async () => {
    const folder = await temporaryFolder()
    const rounds = 32
    const paths: string[] = []
    for (let round = 0; round < rounds; round++) {
      const path = join(folder, String(round), '.lock')
      await mkdir(join(folder, String(round)))
      paths.push(path)
      if (round % 4 === 0) continue
      const dead = deadHolder()
      await writeFile(path, writeHolder(dead))
      if (round % 4 < 2) continue
      const claimant = deadHolder()
      await writeFile(`${path}.after-${dead.token}`, writeHolder(claimant))
      if (round % 4 < 3) continue
      await writeFile(`${path}.after-${dead.token}.after-${claimant.token}`, writeHolder(deadHolder()))
    }
    const lines = await raceTogether(RACERS, paths)
    expect(lines).toHaveLength(RACERS * rounds)
    for (let round = 0; round < rounds; round++) {
      const winners = lines.filter((line) => line === `${round} acquired`)
      expect(winners, `round ${round}`).toHaveLength(1)
    }
    console.log(`lock races: ${rounds} rounds of ${RACERS} processes, one winner in each`)
  })

  test('a lock is handed down a chain of processes that are each killed holding it, never to two at once', async () => {
    const folder = await temporaryFolder()
    const args = ['chain', join(folder, '.lock'), join(folder, 'inside')]
    const outputs = await Promise.all(Array.from({ length: RACERS }, () => race(args)))
    expect(outputs).toEqual(outputs.map(() => 'done\n'))
    expect((await readdir(folder)).sort()).toEqual(['.lock'])
  })
})
