import {
  appendFile,
  copyFile,
  mkdir,
  readdir,
  readFile,
  rename,
  rm,
  utimes,
  writeFile,
} from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseJobText } from '../../../../src/core/job/parse-job-text.ts'
import type { JobSession } from '../../../../src/main/services/job-folder/job-session.ts'
import { openJob } from '../../../../src/main/services/job-folder/open-job.ts'
import { inWords } from '../../../../src/main/services/words/services-words.ts'
import {
  copyOf,
  filesAfter,
  filesOf,
  markIds,
  pick,
  putFiles,
  withJob,
} from '../../fixtures/history-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

/** The folder beside which everything acknowledged was kept, as the reason names it. */
async function rescuedFrom(session: JobSession, folder: string): Promise<string> {
  expect(session.writable).toBe(false)
  const name = (await readdir(folder)).find((one) => one.startsWith('rescued-')) ?? ''
  expect(session.readOnlyBecause && inWords(session.readOnlyBecause)).toContain(join(folder, name))
  return join(folder, name)
}

/** The marks of a job that is made of what was rescued. */
async function marksRescued(folder: string, rescued: string): Promise<string[]> {
  const copy = await copyOf(folder, 'again')
  await rm(join(copy, '.lock'), { force: true })
  for (const name of ['job.json', 'history.ndjson']) {
    await rm(join(copy, name), { recursive: true, force: true })
    await copyFile(join(rescued, name), join(copy, name))
  }
  return withJob(copy, async (session) => {
    expect(session.writable).toBe(true)
    await session.edit(pick('after'), 'AR')
    return markIds(session.job).slice(4)
  })
}

const HISTORY = 'history.ndjson'

describe('while the job is open', () => {
  const swaps: [what: string, touch: (folder: string) => Promise<unknown>][] = [
    [
      'replaced by a copy of itself',
      async (folder) => {
        await copyFile(join(folder, HISTORY), join(folder, 'copy'))
        await rename(join(folder, 'copy'), join(folder, HISTORY))
      },
    ],
    ['deleted', (folder) => rm(join(folder, HISTORY))],
    [
      'made anew, empty',
      async (folder) => {
        await rm(join(folder, HISTORY))
        await writeFile(join(folder, HISTORY), '')
      },
    ],
    [
      'cut short in place',
      async (folder) => {
        const bytes = await readFile(join(folder, HISTORY))
        await writeFile(join(folder, HISTORY), bytes.subarray(0, bytes.length - 40))
      },
    ],
    [
      'overwritten in place by as many bytes',
      async (folder) => {
        const { length } = await readFile(join(folder, HISTORY))
        await writeFile(join(folder, HISTORY), Buffer.alloc(length, 0x20))
      },
    ],
    ['added to', async (folder) => writeFile(join(folder, HISTORY), 'theirs\n', { flag: 'a' })],
    [
      'replaced by a folder',
      async (folder) => {
        await rm(join(folder, HISTORY))
        await mkdir(join(folder, HISTORY))
      },
    ],
  ]

  test.each(swaps)(
    'a history that is %s: no edit is acknowledged any more, and all that were are kept',
    async (_, touch) => {
      const { folder } = await workshopJob()
      const session = await openJob(folder, { mode: 'write' })
      await session.edit(pick('a'), 'AR')
      await touch(folder)
      const found = await filesOf(folder).catch(() => undefined)
      await expect(session.edit(pick('b'), 'AR')).rejects.toThrow(
        'by another program while this job was open',
      )
      await expect(session.edit(pick('c'), 'AR')).rejects.toThrow('read-only')
      const rescued = await rescuedFrom(session, folder)
      await session.close()
      // Nothing of theirs was written over.
      expect(await filesOf(folder).catch(() => undefined)).toEqual(found)
      expect(await marksRescued(folder, rescued)).toEqual(['a', 'after'])
    },
  )

  test('a job.json that is rolled back: no edit is acknowledged any more, and all that were are kept', async () => {
    const { folder } = await workshopJob()
    const old = await readFile(join(folder, 'job.json'))
    await withJob(folder, async (session) => {
      await session.edit(pick('a'), 'AR')
      await session.edit(pick('b'), 'AR')
    })
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('c'), 'AR')
    await writeFile(join(folder, 'job.json'), old)
    await expect(session.edit(pick('d'), 'AR')).rejects.toThrow('job.json was changed, replaced or removed')
    const rescued = await rescuedFrom(session, folder)
    await session.close()
    expect(await marksRescued(folder, rescued)).toEqual(['a', 'b', 'c', 'after'])
    // And the folder itself: an older job.json and the whole history are the same job.
    await withJob(folder, async (again) => {
      expect(markIds(again.job).slice(4)).toEqual(['a', 'b', 'c'])
      await again.edit(pick('d'), 'AR')
    })
  })

  test('a folder that is moved away and one of another job put in its place are both left alone', async () => {
    const { folder } = await workshopJob()
    const other = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('a'), 'AR')
    await rename(folder, `${folder}-moved`)
    await rename(other.folder, folder)
    const found = await filesOf(folder)
    await expect(session.edit(pick('b'), 'AR')).rejects.toThrow('by another program')
    await session.close()
    expect(await filesOf(folder)).toEqual(found)
  })

  test('a folder that is gone: what is in memory is kept beside where it was', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('a'), 'AR')
    await rm(folder, { recursive: true })
    await expect(session.edit(pick('b'), 'AR')).rejects.toThrow(`${folder}-rescued-`)
    await session.close()
    const said = session.readOnlyBecause === undefined ? '' : inWords(session.readOnlyBecause)
    const kept = /is in (\S+):/.exec(said)?.[1] ?? ''
    const text = await readFile(join(kept, 'job.json'), 'utf8')
    expect(markIds(parseJobText(text)).at(-1)).toBe('a')
  })

  test('files that are only touched, as a backup does, are no change', async () => {
    const { folder } = await workshopJob()
    await withJob(folder, async (session) => {
      await session.edit(pick('a'), 'AR')
      const later = new Date(Date.now() + 5000)
      await utimes(join(folder, HISTORY), later, later)
      await utimes(join(folder, 'job.json'), later, later)
      await session.edit(pick('b'), 'AR')
      expect(markIds(session.job).slice(4)).toEqual(['a', 'b'])
    })
  })
})

describe('while the job is closed', () => {
  /** A job that was edited apart in two copies, from edit 2 on. */
  async function twoCopies(): Promise<{ here: string; there: string }> {
    const { folder } = await workshopJob()
    await withJob(folder, async (session) => {
      await session.edit(pick('a'), 'AR')
      await session.edit(pick('b'), 'AR')
    })
    const there = await copyOf(folder, 'there')
    for (const [copy, name] of [
      [folder, 'here'],
      [there, 'there'],
    ] as const) {
      await withJob(copy, async (session) => {
        for (let i = 0; i < 3; i++) await session.edit(pick(`${name}${i}`), 'AR')
      })
    }
    return { here: folder, there }
  }

  test("another copy's history laid over this one's is told from it, and the job is not opened", async () => {
    const { here, there } = await twoCopies()
    const [ours, theirs] = [await filesOf(here), await filesOf(there)]
    await putFiles(here, { job: ours.job, history: theirs.history })
    await expect(openJob(here, { mode: 'write' })).rejects.toThrow(
      'is that of another copy of this job: its edit 5',
    )
    await putFiles(here, ours)
    await withJob(here, async ({ job }) => expect(markIds(job).at(-1)).toBe('here2'))
  })

  test("another job's history is told from this one's", async () => {
    const { here } = await twoCopies()
    const { folder: other } = await workshopJob()
    await putFiles(here, { job: (await filesOf(here)).job, history: (await filesOf(other)).history })
    await expect(openJob(here, { mode: 'write' })).rejects.toThrow('is that of another job than job.json')
  })

  test("lines of another copy that were put after this one's are told from what was cut short", async () => {
    const { here, there } = await twoCopies()
    const [ours, theirs] = [await filesOf(here), await filesOf(there)]
    const [line] = theirs.history.toString().trimEnd().split('\n').slice(-1)
    await putFiles(here, { job: ours.job, history: Buffer.concat([ours.history, Buffer.from(`${line}\n`)]) })
    await expect(openJob(here, { mode: 'write' })).rejects.toThrow('what follows does not go on from it')
  })

  test.each([
    ['text with a line end', 'theirs\n'],
    ['text without', 'theirs'],
    ['an object of another program', '{"theirs":1}\n'],
    ['an object of another program that begins alike', '{"n":7,"theirs":1}\n'],
    ['an empty line', '\n'],
  ])('%s after the last line: it is said that another put it there, and set aside', async (_, text) => {
    const { here } = await twoCopies()
    await appendFile(join(here, HISTORY), text)
    await withJob(here, async (session) => {
      expect(session.notices.map(({ code }) => code)).toEqual(['history.alien'])
      const [said] = session.notices.map(inWords)
      expect(said).toContain('is not as this program writes it')
      await session.edit(pick('x'), 'AR')
    })
    expect(await readdir(join(here, 'set-aside'))).toHaveLength(1)
  })

  test('a last line that was cut short is told from one that another put there', async () => {
    const { here } = await twoCopies()
    await appendFile(join(here, HISTORY), '{"n":6,"at":"2026-03-01T08:00:00.000Z","by":"AR"')
    await withJob(here, async ({ notices }) =>
      expect(notices.map(({ code }) => code)).toEqual(['history.torn']),
    )
  })

  test.each([
    [
      'a history that is gone',
      ({ job }: { job: Buffer }) => ({ job }),
      'is gone, and job.json was written at edit 5',
    ],
    [
      'a history that is rolled back',
      ({ job, history }: { job: Buffer; history: Buffer }) => ({
        job,
        history: Buffer.from(`${history.toString().split('\n').slice(0, 4).join('\n')}\n`),
      }),
      'job.json was written at edit 5, but',
    ],
    [
      'a history with a line taken out',
      ({ job, history }: { job: Buffer; history: Buffer }) => ({
        job: Buffer.from(job.toString()),
        history: Buffer.from(
          history
            .toString()
            .split('\n')
            .filter((_, i) => i !== 5)
            .join('\n'),
        ),
      }),
      'job.json was written at edit 5, but',
    ],
    [
      'an empty job.json',
      ({ history }: { history: Buffer }) => ({ job: Buffer.alloc(0), history }),
      'scantling mend',
    ],
    [
      'a job.json of zeros',
      ({ job, history }: { job: Buffer; history: Buffer }) => ({ job: Buffer.alloc(job.length), history }),
      'scantling mend',
    ],
    ['a job.json that is gone', ({ history }: { history: Buffer }) => ({ history }), 'scantling mend'],
  ])('%s: the job is not opened, nothing is changed, and a way out is named', async (_, spoil, what) => {
    const { here } = await twoCopies()
    const spoilt = spoil(await filesOf(here))
    await putFiles(here, spoilt)
    for (const mode of ['read', 'write'] as const) {
      const said = await openJob(here, { mode }).then(() => 'opened', String)
      expect(said).toContain(what)
      expect(said).toContain(`scantling mend ${here}`)
    }
    const { job, history } = spoilt as { job?: Buffer; history?: Buffer }
    if (job !== undefined) expect(await readFile(join(here, 'job.json'))).toEqual(job)
    if (history !== undefined) expect(await readFile(join(here, HISTORY))).toEqual(history)
  })

  test('a job.json changed by hand is shown as it is, and not edited before a person has said which is meant', async () => {
    const { here } = await twoCopies()
    const { job } = await filesOf(here)
    const edited = job.toString().replace('Drum of the chain ferry', 'Drum, by hand')
    await writeFile(join(here, 'job.json'), edited)
    const session = await openJob(here, { mode: 'write' })
    expect(session.writable).toBe(false)
    expect(session.job.title).toBe('Drum, by hand')
    expect(session.readOnlyBecause && inWords(session.readOnlyBecause)).toContain('was changed by hand')
    await expect(session.edit(pick('x'), 'AR')).rejects.toThrow('scantling mend')
    await session.close()
    expect(await readdir(here)).not.toContain('.lock')
    expect(await readFile(join(here, 'job.json'), 'utf8')).toBe(edited)
  })

  test('a job.json changed by hand, with edits made after it was written, is not opened', async () => {
    const { folder } = await workshopJob()
    const files = await filesAfter(folder, [pick('a')])
    await putFiles(folder, {
      ...files,
      job: Buffer.from(files.job.toString().replace('chain ferry', 'ferry')),
    })
    await expect(openJob(folder, { mode: 'read' })).rejects.toThrow('and more was done in the job since')
  })

  test('an older job.json with the whole history is the same job', async () => {
    const { folder } = await workshopJob()
    const old = (await filesOf(folder)).job
    await withJob(folder, async (session) => {
      await session.edit(pick('a'), 'AR')
      await session.undo('AR')
      await session.redo('AR')
    })
    await writeFile(join(folder, 'job.json'), old)
    await withJob(folder, async (session) => {
      expect(markIds(session.job).at(-1)).toBe('a')
      expect(session.undoName).toBe('add mark a')
      await session.undo('AR')
    })
  })

  test('a history whose line ends were turned into those of another system still is the history', async () => {
    const { here } = await twoCopies()
    const { job, history } = await filesOf(here)
    await putFiles(here, { job, history: Buffer.from(history.toString().replaceAll('\n', '\r\n')) })
    await withJob(here, async (session) => {
      expect(session.writable).toBe(true)
      await session.undo('AR')
      await session.undo('AR')
      await session.edit(pick('x'), 'AR')
    })
    await withJob(here, async ({ job: now }) =>
      expect(markIds(now).slice(4)).toEqual(['a', 'b', 'here0', 'x']),
    )
  })
})
