import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { z } from 'zod'
import { LIMITS, type Limits } from '../../../src/contract/limits.ts'
import type { ReadOrder } from '../../../src/main/services/scans/reader/read-protocol.ts'
import { ReadingProcess } from '../../../src/main/services/scans/reader/reading-process.ts'
import { timeAllowed } from '../../../src/main/services/scans/reader/time-allowed.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'

const program = { path: join(import.meta.dirname, 'fixtures', 'badly-behaved-reader.mjs'), args: [] }

const order = (called: string, limits: Partial<Limits> = {}): ReadOrder => ({
  path: called,
  called,
  limits: { ...LIMITS, ...limits },
  task: { do: 'look', from: 1 },
})

/** What the stand-in answers. */
const ANSWER = z.strictObject({ process: z.int() })

const all: ReadingProcess[] = []
const aProcess = (newestFirst = false): ReadingProcess => {
  const reading = new ReadingProcess({ program, newestFirst })
  all.push(reading)
  return reading
}
afterEach(() => {
  for (const reading of all.splice(0)) reading.end()
})

const pidOf = async (reading: ReadingProcess, limits: Partial<Limits> = {}): Promise<number> =>
  (await reading.do(order('sound.tif', limits), ANSWER)).process

const isGone = (pid: number): boolean => {
  try {
    process.kill(pid, 0)
    return false
  } catch {
    return true
  }
}

describe('the time that reading may take', () => {
  test('is 15 s for a small file whatever it says of itself, more for a large one, and never above the limit', async () => {
    const here = join(import.meta.dirname, 'reading-process.test.ts')
    const at = (limits: Partial<Limits>, task?: ReadOrder['task']) =>
      timeAllowed({ ...order(here, limits), path: here, ...(task && { task }) })
    expect(await at({})).toBe(16)
    expect(await at({ seconds: 5 })).toBe(5)
    expect(await at({}, { do: 'draw', page: 1, folder: 'x' })).toBe(LIMITS.seconds)
  })
})

describe('the process that reads scans', () => {
  test('is kept for one look after another', async () => {
    const reading = aProcess()
    expect(await pidOf(reading)).toBe(await pidOf(reading))
  })

  test.each([
    ['crash.tif', {}, /^The scan crash\.tif can't be read, because reading it broke off: .+\.$/],
    ['senseless.tif', {}, /^The scan senseless\.tif can't be read, because reading it broke off: .+\.$/],
    [
      'hang.tif',
      { seconds: 1 },
      /^The scan hang\.tif takes longer than 1 s to read: .+"seconds" higher .+\.$/,
    ],
    [
      'greedy.tif',
      { memory: 256 * 1024 ** 2 },
      /^The scan greedy\.tif takes more than 256 MiB of memory to read: .+"memory" higher .+\.$/,
    ],
  ])(
    'by a scan that makes it fail is ended, and the next scan is read by another: %s',
    async (called, limits, sentence) => {
      const reading = aProcess()
      const before = await pidOf(reading, limits)
      const failure: unknown = await reading
        .do(order(called, limits), ANSWER)
        .catch((error: unknown) => error)
      expect(failure).toBeInstanceOf(ServiceError)
      expect((failure as ServiceError).message).toMatch(sentence)
      const after = await pidOf(reading, limits)
      expect(after).not.toBe(before)
      await expect.poll(() => isGone(before)).toBe(true)
    },
  )

  test('is ended when what it does is not wanted any more', async () => {
    const reading = aProcess()
    const before = await pidOf(reading)
    const abort = new AbortController()
    const doing = reading.do(order('hang.tif'), ANSWER, abort.signal)
    setTimeout(() => abort.abort(), 100)
    await expect(doing).rejects.toThrow()
    await expect.poll(() => isGone(before)).toBe(true)
    expect(await pidOf(reading)).not.toBe(before)
  })

  test('finishes what it began though it is not wanted any more, where that is wanted', async () => {
    const reading = new ReadingProcess({ program, finishes: true })
    all.push(reading)
    const before = await pidOf(reading)
    const abort = new AbortController()
    const [begun, waiting] = ['first', 'second'].map((name) => reading.do(order(name), ANSWER, abort.signal))
    const refused = expect(waiting).rejects.toThrow()
    abort.abort()
    expect(await begun).toEqual({ process: before })
    await refused
    expect(await pidOf(reading)).toBe(before)
  })

  test('does what was asked for last first, where that is wanted', async () => {
    const reading = aProcess(true)
    const done: string[] = []
    const names = ['first', 'second', 'third']
    await Promise.all(names.map((name) => reading.do(order(name), ANSWER).then(() => done.push(name))))
    expect(done).toEqual(['first', 'third', 'second'])
  })

  test('that can not be begun is told of in a sentence', async () => {
    const path = join(import.meta.dirname, 'fixtures', 'no-such-program.mjs')
    const reading = new ReadingProcess({ program: { path, args: [] } })
    await expect(reading.do(order('plan.tif'), ANSWER)).rejects.toThrow(/^The scan plan\.tif can't be read/)
  })
})
