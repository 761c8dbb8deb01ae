import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { acquireLock, type LockOutcome } from '../../../src/main/services/job-folder/lock/acquire-lock.ts'
import { thisHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { pidNamespace } from '../../../src/main/services/machine/this-boot.ts'
import { type BundledProgram, bundleProgram } from '../fixtures/bundle-program.ts'
import { holderIn, NOW } from '../fixtures/lock-file.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const OF_ITS_OWN = ['--pid', '--fork', '--mount-proc']

/** In which /proc shows the processes of the namespace outside. */
const UNDER_ANOTHERS_PROC = ['--pid', '--fork']

const canBeMade = spawnSync('unshare', [...OF_ITS_OWN, 'true']).status === 0
if (!canBeMade) {
  process.stdout.write('Locks across PID namespaces: skipped, for no namespace can be made here.\n')
}

let racer: BundledProgram
beforeAll(async () => {
  racer = await bundleProgram('tests/main/fixtures/lock-racer.ts', true)
})
afterAll(() => racer.remove())

interface Inside {
  outcome: LockOutcome
  /** Ends it. */
  end(): Promise<void>
}

async function firstLines(child: ChildProcess, most: number): Promise<LockOutcome[]> {
  if (child.stdout === null) throw new Error('It has no output.')
  const outcomes: LockOutcome[] = []
  for await (const line of createInterface({ input: child.stdout })) {
    if (outcomes.push(JSON.parse(line)) === most) break
  }
  return outcomes
}

/** Tries for a lock in a namespace of its own. */
async function tryInside(path: string, namespace: readonly string[]): Promise<Inside> {
  const args = [...namespace, process.execPath, racer.path, 'once', path]
  const child = spawn('unshare', args, { stdio: ['pipe', 'pipe', 'inherit'] })
  const [outcome] = await firstLines(child, 1)
  if (outcome === undefined) throw new Error('It ended before it had tried.')
  return {
    outcome,
    end: async () => {
      child.stdin.end()
      await once(child, 'exit')
    },
  }
}

/** What several say that try for a lock in one namespace, one after the other; each but the last has ended then. */
async function tryInOne(path: string, namespace: readonly string[], script: string): Promise<LockOutcome[]> {
  const command = script.replaceAll('TRY', `'${process.execPath}' '${racer.path}' once '${path}'`)
  const child = spawn('unshare', [...namespace, 'sh', '-c', command], { stdio: ['pipe', 'pipe', 'inherit'] })
  const outcomes = await firstLines(child, 2)
  child.stdin.end()
  await once(child, 'exit')
  return outcomes
}

describe.skipIf(!canBeMade)('a lock that is held in another PID namespace', () => {
  test.each([OF_ITS_OWN, UNDER_ANOTHERS_PROC].map((namespace) => [namespace.join(' '), namespace]))(
    'made by unshare %s: is not taken while its holder lives, nor by itself afterwards, but when asked',
    async (_, namespace) => {
      const path = join(await temporaryFolder(), '.lock')
      const inside = await tryInside(path, namespace)
      expect(inside.outcome).toEqual({ kind: 'acquired' })
      const holder = await holderIn(path)
      expect(holder?.namespace).toMatch(/^pid:\[\d+\]$/)
      expect(holder?.namespace).not.toBe(pidNamespace())
      const held = { kind: 'held', holder, takeOver: holder?.token }
      expect(await acquireLock(path, thisHolder(NOW))).toEqual(held)
      await inside.end()
      expect(await acquireLock(path, thisHolder(NOW))).toEqual(held)
      expect(await acquireLock(path, thisHolder(NOW), holder?.token)).toEqual({
        kind: 'acquired',
        from: { holder, why: 'asked' },
      })
    },
  )

  test('nor is one that is held outside taken from inside', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const holder = thisHolder(NOW)
    expect(await acquireLock(path, holder)).toEqual({ kind: 'acquired' })
    for (const namespace of [OF_ITS_OWN, UNDER_ANOTHERS_PROC]) {
      const inside = await tryInside(path, namespace)
      await inside.end()
      expect(inside.outcome).toEqual({ kind: 'held', holder, takeOver: holder.token })
    }
    expect(await holderIn(path)).toEqual(holder)
  })

  test('nor one of a number that nobody has here', async () => {
    const path = join(await temporaryFolder(), '.lock')
    const inside = await tryInside(path, OF_ITS_OWN)
    const holder = await holderIn(path)
    // No process has this number: Linux counts to 2^22 at most.
    const other = { ...thisHolder(NOW), ...holder, pid: 99_999_999 }
    await writeFile(path, JSON.stringify(other))
    expect(await acquireLock(path, thisHolder(NOW))).toMatchObject({ kind: 'held' })
    await inside.end()
  })
})

describe.skipIf(!canBeMade)('within one PID namespace that is not the machine’s own', () => {
  test.each([
    ['of its own /proc', OF_ITS_OWN],
    ['under another’s /proc', UNDER_ANOTHERS_PROC],
  ])('%s: the lock of one that has ended is taken over', async (_, namespace) => {
    const path = join(await temporaryFolder(), '.lock')
    const outcomes = await tryInOne(path, namespace, 'TRY </dev/null; TRY')
    expect(outcomes).toMatchObject([
      { kind: 'acquired' },
      { kind: 'acquired', from: { why: 'process-ended' } },
    ])
  })

  test.each([
    ['of its own /proc', OF_ITS_OWN],
    ['under another’s /proc', UNDER_ANOTHERS_PROC],
  ])('%s: the lock of one that lives is not', async (_, namespace) => {
    const path = join(await temporaryFolder(), '.lock')
    const wait = `while ! [ -s '${path}' ]; do sleep 0.05; done`
    const outcomes = await tryInOne(path, namespace, `sleep 60 | TRY & ${wait}; TRY; kill $!`)
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['acquired', 'held'])
  })
})
