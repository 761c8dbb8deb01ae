import { spawn } from 'node:child_process'
import { mkdir, readdir, readFile, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { acquireLock, releaseLock } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { thisHolder, writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { processStart } from '../../../src/main/services/machine/process-start.ts'
import { holderInWords } from '../../../src/main/services/words/holder-in-words.ts'
import { type BundledProgram, bundleProgram } from '../fixtures/bundle-program.ts'
import { endedHolder, holderElsewhere, holderIn, NOW } from '../fixtures/lock-file.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

/** Before any machine that runs this was started. */
const LONG_AGO = new Date('2001-01-01T00:00:00Z')

const linux = process.platform === 'linux'

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
    expect(await holderIn(path)).toEqual(other)
  })

  test('a lock of a process that has ended is taken over, and it is said whose it was', async () => {
    const folder = await temporaryFolder()
    const path = join(folder, '.lock')
    const dead = endedHolder()
    await writeFile(path, writeHolder(dead))
    const mine = thisHolder(NOW)
    expect(await acquireLock(path, mine)).toEqual({
      kind: 'acquired',
      from: { holder: dead, why: 'process-ended' },
    })
    expect(await holderIn(path)).toEqual(mine)
    expect(await readdir(folder)).toEqual(['.lock'])
  })

  test.runIf(linux)('a pid that belongs to another process by now does not keep the lock', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const start = processStart(process.pid)
    expect(start).toMatch(/:\d+$/)
    const before = { ...thisHolder(NOW), start: `${start}0` }
    await writeFile(path, writeHolder(before))
    expect(await acquireLock(path, thisHolder(NOW))).toMatchObject({ from: { why: 'process-ended' } })
  })

  test('a lock from another machine is never taken over by itself', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const elsewhere = holderElsewhere()
    await writeFile(path, writeHolder(elsewhere))
    const { token } = elsewhere
    expect(await acquireLock(path, thisHolder(NOW))).toEqual({
      kind: 'held',
      holder: elsewhere,
      takeOver: token,
    })
    expect(await holderIn(path)).toEqual(elsewhere)
  })

  test.each([
    ['empty', ''],
    ['half written', '{"token":"00'],
    ['of another program', '4711\n'],
    ['of somebody with a name without end', JSON.stringify({ ...thisHolder(NOW), user: 'x'.repeat(10_000) })],
    ['without a pid', JSON.stringify({ ...thisHolder(NOW), pid: 'x' })],
  ])('a lock file that is %s counts as held by somebody unknown', async (_, text) => {
    const path = join(await temporaryFolder(), '.lock')
    await writeFile(path, text)
    const outcome = await acquireLock(path, thisHolder(NOW))
    expect(outcome).toEqual({
      kind: 'held',
      holder: undefined,
      takeOver: expect.stringMatching(/^[0-9a-f]{24}$/),
    })
    expect(await readFile(path, 'utf8')).toBe(text)
  })
})

describe('when many processes try for one lock at once', () => {
  const RACERS = 10

  test('exactly one wins, whether the lock is free, left by a dead process or half taken over, damaged or asked for', async () => {
    const folder = await temporaryFolder()
    const rounds = 30
    const paths: string[] = []
    for (let round = 0; round < rounds; round++) {
      const path = join(folder, String(round), '.lock')
      await mkdir(join(folder, String(round)))
      paths.push(path)
      const kind = round % 6
      if (kind === 0) continue
      if (kind === 1) {
        await writeFile(path, '')
        await utimes(path, LONG_AGO, LONG_AGO)
        continue
      }
      const left = kind === 2 ? holderElsewhere() : endedHolder()
      await writeFile(path, writeHolder(left))
      if (kind === 2) paths[round] = `${path}=${left.token}`
      if (kind <= 3) continue
      const claimant = endedHolder()
      await writeFile(`${path}.after-${left.token}`, writeHolder(claimant))
      if (kind === 4) continue
      await writeFile(`${path}.after-${left.token}.after-${claimant.token}`, writeHolder(endedHolder()))
    }
    const lines = await raceTogether(RACERS, paths)
    expect(lines).toHaveLength(RACERS * rounds)
    for (let round = 0; round < rounds; round++) {
      const winners = lines.filter((line) => line === `${round} acquired`)
      expect(winners, `round ${round}`).toHaveLength(1)
      expect(await readdir(join(folder, String(round)))).toEqual(['.lock'])
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
