import { readdir, readFile, rename, rm, truncate, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { KnownLines } from '../../../../src/main/services/job-folder/history/known-lines.ts'
import { readWhole } from '../../../../src/main/services/job-folder/history/read-whole.ts'
import { historyBack } from '../../../../src/main/services/job-folder/history-back.ts'
import type { JobSession } from '../../../../src/main/services/job-folder/job-session.ts'
import { lookAtFolder, mendJob } from '../../../../src/main/services/job-folder/mend-job.ts'
import { openJob } from '../../../../src/main/services/job-folder/open-job.ts'
import { inWords } from '../../../../src/main/services/words/services-words.ts'
import { copyOf, filesOf, markIds, pick, withJob } from '../../fixtures/history-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

const HISTORY = 'history.ndjson'
const NOW = new Date('2026-03-01T08:00:00Z')

const said = ({ readOnlyBecause }: JobSession): string =>
  readOnlyBecause === undefined ? '' : inWords(readOnlyBecause)

/** Puts a file's bytes into the one of that name in a folder, which stays the same file. */
const overwrite = async (folder: string, name: string, from: string): Promise<void> =>
  writeFile(join(folder, name), await readFile(join(from, name)))

/** A job with 39 edits behind it, closed; what it was at edit 30. */
async function longJob(): Promise<{ folder: string; at30: string }> {
  const { folder } = await workshopJob()
  let at30 = ''
  for (const [from, to] of [
    [1, 30],
    [31, 39],
  ] as const) {
    await withJob(folder, async (session) => {
      for (let i = from; i <= to; i++) await session.edit(pick(`old${i}`), 'AR')
    })
    if (to === 30) at30 = await copyOf(folder, 'at30')
  }
  return { folder, at30 }
}

/** Edits 40 and 41 are made and acknowledged, the history is touched, and the next edit refused. */
async function touchedAfterTwo(folder: string, touch: () => Promise<unknown>): Promise<string> {
  const session = await openJob(folder, { mode: 'write' })
  await session.edit(pick('new40'), 'AR')
  await session.edit(pick('new41'), 'AR')
  await touch()
  await expect(session.edit(pick('refused'), 'AR')).rejects.toThrow('by another program')
  await session.close()
  return said(session)
}

const rescuedOf = async (folder: string): Promise<string> =>
  join(folder, (await readdir(folder)).find((name) => name.startsWith('rescued-')) ?? '')

/** The numbers of the lines of a job's history, the newest first. */
async function told(folder: string): Promise<number[]> {
  const lines: number[] = []
  for await (const { n } of historyBack(folder)) lines.push(n)
  return lines
}

/** All numbers from one down to another. */
const down = (from: number, to: number): number[] => Array.from({ length: from - to + 1 }, (_, i) => from - i)

describe('a history that is overwritten in place while the job is open', () => {
  const ways: [what: string, touch: (folder: string) => Promise<unknown>][] = [
    ["another job's", async (folder) => overwrite(folder, HISTORY, (await workshopJob()).folder)],
    ['cut short before this opening', (folder) => truncate(join(folder, HISTORY), 10_000)],
    ['emptied', (folder) => truncate(join(folder, HISTORY), 0)],
  ]

  test.each(ways)(
    '%s: what was done in this opening is told and can be undone, and what is gone is said',
    async (_, touch) => {
      const { folder } = await longJob()
      const banner = await touchedAfterTwo(folder, () => touch(folder))
      const rescued = await rescuedOf(folder)
      expect(banner).toContain(
        `the job with every value as of edit 41 is in ${rescued}, but its history begins with edit 40, and what was done before that can't be told or undone any more`,
      )
      expect(banner).not.toContain('everything acknowledged')
      const whole = await readWhole(rescued)
      expect([whole.tip.n, whole.begins]).toEqual([41, 40])

      const { n, begins, leaves } = await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
      expect([n, begins, leaves]).toEqual([41, 40, null])
      await withJob(folder, async (session) => {
        expect(session.notices).toEqual([])
        expect(markIds(session.job).slice(-3)).toEqual(['old39', 'new40', 'new41'])
        expect(session.undoName).toBe('add mark new41')
        await session.undo('AR')
        await session.undo('AR')
        expect(markIds(session.job).at(-1)).toBe('old39')
        await expect(session.undo('AR')).rejects.toThrow('nothing to undo')
        await session.redo('AR')
        expect(markIds(session.job).at(-1)).toBe('new40')
      })
      expect(await told(folder)).toEqual(down(44, 39))
      expect((await lookAtFolder(folder)).trouble).toBeNull()
    },
  )

  test('cut short within what was done in this opening: all lines come back', async () => {
    const { folder } = await longJob()
    const { length } = await readFile(join(folder, HISTORY))
    const banner = await touchedAfterTwo(folder, () => truncate(join(folder, HISTORY), length + 20))
    expect(banner).toContain(`everything acknowledged is in ${await rescuedOf(folder)}`)
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    expect(await told(folder)).toEqual(down(41, 0))
    await withJob(folder, async (session) => {
      for (let i = 0; i < 41; i++) await session.undo('AR')
      expect(session.undoName).toBeUndefined()
    })
  })

  test('by a copy of the job that went another way after the last line before this opening: all lines come back', async () => {
    const { folder } = await longJob()
    const other = await copyOf(folder, 'other')
    await withJob(other, async (session) => session.edit(pick('theirs'), 'AR'))
    await touchedAfterTwo(folder, () => overwrite(folder, HISTORY, other))
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    expect(await told(folder)).toEqual(down(41, 0))
    await withJob(folder, async ({ job }) => expect(markIds(job)).not.toContain('theirs'))
  })

  test('by an older copy that ends before this opening: only lines that join up are used', async () => {
    const { folder, at30 } = await longJob()
    const banner = await touchedAfterTwo(folder, () => overwrite(folder, HISTORY, at30))
    expect(banner).toContain('its history begins with edit 40')
  })

  test('in the middle only: the lines after that are kept', async () => {
    const { folder } = await longJob()
    const path = join(folder, HISTORY)
    const banner = await touchedAfterTwo(folder, async () => {
      const lines = (await readFile(path, 'utf8')).split('\n')
      lines[20] = ' '.repeat(lines[20]?.length ?? 0)
      lines.splice(41, 1)
      await writeFile(path, lines.join('\n'))
    })
    expect(banner).toContain('its history begins with edit 21')
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    expect(await told(folder)).toEqual(down(41, 20))
  })

  test('steps back and forth lead no further back than what is known', async () => {
    const { folder } = await longJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.undo('AR')
    await session.undo('AR')
    await session.redo('AR')
    await truncate(join(folder, HISTORY), 0)
    await expect(session.edit(pick('refused'), 'Eve')).rejects.toThrow('its history begins with edit 40')
    await session.close()
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    await withJob(folder, async (again) => {
      expect(again.job.people).toEqual(session.job.people)
      expect(markIds(again.job)).toEqual(markIds(session.job))
      expect([again.undoName, again.redoName]).toEqual(['add mark old38', 'add mark old39'])
      await again.redo('AR')
      expect(markIds(again.job).at(-1)).toBe('old39')
      await again.undo('AR')
      await again.undo('AR')
      expect(again.undoName).toBeUndefined()
    })
  })

  test('before anything was done in this opening: every value is kept, and it is said that nothing can be told', async () => {
    const { folder } = await longJob()
    const session = await openJob(folder, { mode: 'write' })
    await truncate(join(folder, HISTORY), 0)
    await expect(session.edit(pick('refused'), 'AR')).rejects.toThrow(
      "its history begins after edit 39, and what was done up to it can't be told or undone any more",
    )
    await session.close()
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    await withJob(folder, async ({ job }) => expect(markIds(job).at(-1)).toBe('old39'))
  })
})

describe('what is said of a folder that was touched', () => {
  test('a job.json that is rolled back: opening again is enough, and the rescue is not needed', async () => {
    const { folder, at30 } = await longJob()
    const banner = await touchedAfterTwo(folder, () => overwrite(folder, 'job.json', at30))
    const rescued = await rescuedOf(folder)
    expect(banner).toContain('it is enough to close the job and open it again')
    expect(banner).toContain(rescued)
    expect(banner).not.toContain('scantling mend')
    const files = await filesOf(folder)
    await expect(mendJob(folder, 'rescued', { by: 'AR', now: NOW })).rejects.toThrow(
      `the job already holds all that the rescue ${rescued} holds, so nothing is to be done`,
    )
    expect(await filesOf(folder)).toEqual(files)
    await withJob(folder, async (session) => {
      expect(session.notices).toEqual([])
      expect(session.undoName).toBe('add mark new41')
    })
  })

  test('a job.json that is gone: the history is named as what holds all of the rescue', async () => {
    const { folder } = await longJob()
    const banner = await touchedAfterTwo(folder, () => rm(join(folder, 'job.json')))
    expect(banner).toContain('scantling mend')
    await expect(mendJob(folder, 'rescued', { by: 'AR', now: NOW })).rejects.toThrow(
      `history.ndjson already holds all that the rescue ${await rescuedOf(folder)} holds`,
    )
  })

  test('a history that comes back with a line less: the whole one that was rescued is offered', async () => {
    const { folder } = await longJob()
    const path = join(folder, HISTORY)
    const banner = await touchedAfterTwo(folder, async () => {
      const lines = (await readFile(path, 'utf8')).split('\n')
      await writeFile(join(folder, 'copy'), lines.filter((_, i) => i !== 20).join('\n'))
      await rename(join(folder, 'copy'), path)
    })
    expect(banner).toContain(`everything acknowledged is in ${await rescuedOf(folder)}`)
    const look = await lookAtFolder(folder)
    expect(look.trouble?.code).toBe('history.gap')
    expect(look.history).toMatchObject({ n: 19, leaves: { count: 22, by: ['A. Rivet'] } })
    expect(look.rescues).toMatchObject([{ tip: { n: 41 }, begins: null }])
    await mendJob(folder, 'rescued', { by: 'AR', now: NOW })
    expect(await told(folder)).toEqual(down(41, 0))
    expect(await lookAtFolder(folder)).toMatchObject({ trouble: null, rescues: [] })
  })

  test('a folder that was moved: it is said so, it is sound where it is, and where it was nothing is offered', async () => {
    const { folder } = await longJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('new40'), 'AR')
    await rename(folder, `${folder}-moved`)
    await expect(session.edit(pick('refused'), 'AR')).rejects.toThrow(
      'moved or removed while this job was open',
    )
    const banner = said(session)
    expect(banner).toContain(`${folder} is no longer there`)
    expect(banner).not.toContain(HISTORY)
    expect(banner).toContain(`everything acknowledged is in ${folder}-rescued-`)
    await session.close()
    await expect(mendJob(folder, 'rescued', { by: 'AR', now: NOW })).rejects.toThrow(
      `There is no folder ${folder}`,
    )
    // Its lock went along, and this process, which has it, lives.
    await rm(join(`${folder}-moved`, '.lock'))
    await withJob(`${folder}-moved`, async (there) => {
      expect(there.notices).toEqual([])
      expect(markIds(there.job).at(-1)).toBe('new40')
      await there.edit(pick('new41'), 'AR')
    })
    expect(await told(`${folder}-moved`)).toEqual(down(41, 0))
  })
})

test('of the lines that a session wrote it holds so many bytes, the newest', () => {
  const known = new KnownLines(10)
  for (const text of ['aaaa\n', 'bbbb\n', 'ü\n']) known.add(text)
  expect(known.text).toBe('bbbb\nü\n')
  known.add('longer than ten\n')
  expect(known.text).toBe('')
})
