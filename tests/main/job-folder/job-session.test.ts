import { appendFile, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { JobError } from '../../../src/core/job/text/job-error.ts'
import type { AnyReason } from '../../../src/core/words/reason.ts'
import {
  type HistoryHandle,
  openHistoryFile,
} from '../../../src/main/services/job-folder/history/history-handle.ts'
import type { Acknowledged } from '../../../src/main/services/job-folder/job-session.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { point } from '../fixtures/picked-point.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const now = (): Date => new Date('2026-03-01T08:00:00Z')
const pick = (id: string): Edit => ({ do: 'add-mark', item: point(id, 10, 20) })
const historyOf = (folder: string): Promise<string> => readFile(join(folder, 'history.ndjson'), 'utf8')
/** The lines after the one that the history begins with. */
const linesOf = async (folder: string): Promise<{ n: number; edit: Edit }[]> =>
  (await historyOf(folder))
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => JSON.parse(line))
const documentOf = async (folder: string): Promise<Job> => {
  const { history: _, ...job } = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
  return job
}
/** Number and name of what was acknowledged. */
const numbered = ({ n, name, introduced }: Acknowledged): object =>
  introduced === undefined ? { n, name } : { n, name, introduced: numbered(introduced) }
const words = (why: AnyReason | undefined): string => (why === undefined ? '' : inWords(why))
const markIds = (job: Job): string[] => job.marks.map(({ id }) => id)

describe('an edit', () => {
  test('is acknowledged with its number when its line of the history is on disk, with who and when', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    const before = await documentOf(folder)
    expect(numbered(await session.edit(pick('M5'), 'A. Rivet'))).toEqual({ n: 1, name: 'add mark M5' })
    expect((await linesOf(folder))[0]).toMatchObject({
      n: 1,
      at: '2026-03-01T08:00:00.000Z',
      by: 'AR',
      edit: {
        do: 'add-mark',
        item: { ...point('M5', 10, 20), by: 'AR', at: '2026-03-01T08:00:00.000Z' },
      },
      back: { do: 'remove-mark', id: 'M5' },
    })
    expect(markIds(session.job)).toContain('M5')
    expect(await documentOf(folder)).toEqual(before)
    await session.close()
  })

  test('that would leave the job unsound is refused, and neither the job nor its history changes', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    const { job } = session
    const before = await historyOf(folder)
    await expect(session.edit(pick('M1'), 'AR')).rejects.toThrow(JobError)
    expect(session.job).toBe(job)
    expect(await historyOf(folder)).toBe(before)
    await session.close()
  })

  test('says afterwards in the mark itself who picked it and when, and so it stays when the job is closed', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    await session.edit(pick('M5'), 'a. rivet')
    await session.edit({ do: 'repeat-pick', mark: 'M1', pixel: pixel(50, 51) }, 'AR')
    await session.close()
    const { marks, people } = await documentOf(folder)
    const sitting = expect.stringMatching(/^[\w-]{16}$/)
    const stamp = { by: 'AR', at: '2026-03-01T08:00:00.000Z' }
    const made = { ...stamp, sitting }
    const byHand = { how: 'hand', sigma: 1 }
    expect(marks.at(-1)).toEqual({
      ...point('M5', 10, 20),
      ...made,
      picks: [{ pixel: [10, 20], ...byHand, ...made }],
    })
    expect(marks[0]).toEqual({
      ...point('M1', 50.5, 50.5),
      repeats: [[50, 51]],
      repeatedBy: [made],
      ...stamp,
      picks: [
        { pixel: [50.5, 50.5], ...byHand, ...stamp },
        { pixel: [50, 51], ...made },
      ],
    })
    expect(people).toHaveLength(1)
  })

  test('says in which sitting it was picked: one opening of the job by one person', async () => {
    const { folder } = await workshopJob()
    const sat = async (...who: string[]) => {
      const session = await openJob(folder, { mode: 'write' })
      for (const by of who) await session.edit({ do: 'repeat-pick', mark: 'M1', pixel: pixel(50, 51) }, by)
      await session.close()
    }
    await sat('AR', 'Cora Brace', 'AR')
    await sat('AR')
    const [first] = (await documentOf(folder)).marks
    const [ada, cora, adaAgain, adaLater] = first?.picks?.slice(1).map(({ sitting }) => sitting) ?? []
    expect(adaAgain).toBe(ada)
    expect(new Set([ada, cora, adaLater, undefined]).size).toBe(4)
  })

  test('by somebody new adds them to the people first, under one fsync, and the pick alone is undone', async () => {
    const { folder, job } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    expect(numbered(await session.edit(pick('M5'), 'B. Brass'))).toEqual({
      n: 2,
      name: 'add mark M5',
      introduced: { n: 1, name: 'add person B. Brass' },
    })
    const person = session.job.people.at(-1)
    expect(person).toMatchObject({ name: 'B. Brass', by: person?.id })
    expect(session.job.marks.at(-1)?.by).toBe(person?.id)
    expect(numbered(await session.edit(pick('M6'), 'B. Brass'))).toEqual({ n: 3, name: 'add mark M6' })
    for (let i = 0; i < 2; i++) await session.undo('B. Brass')
    expect(session.undoes).toBeUndefined()
    const people = session.job.people
    expect(people.at(-1)).toEqual(person)
    expect({ ...session.job, edition: undefined }).toEqual({ ...job, people, edition: undefined })
    await session.redo('B. Brass')
    await session.close()
    const again = await openJob(folder, { mode: 'write', now })
    expect([again.undoName, again.redoName]).toEqual(['add mark M5', 'add mark M6'])
    await again.undo('B. Brass')
    await again.close()
    const last = await openJob(folder, { mode: 'write', now })
    expect([last.undoes, last.redoName]).toEqual([undefined, 'add mark M5'])
    await last.close()
  })

  test('by somebody who enters themselves adds them once, and says so', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    const item = { id: 'bea', name: 'B. Brass' }
    const done = await session.edit({ do: 'add-person', item }, 'B. Brass')
    expect(done.introduced).toBeUndefined()
    expect(session.job.people.slice(1)).toEqual([{ ...item, by: 'bea', at: expect.any(String) }])
    await session.close()
  })

  test('that adopts a value says who and when, and taken back leaves nothing of it', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    const before = session.job.dimensions[0]
    await session.edit({ do: 'adopt', dimension: 'drum_length', adopt: 'scaled' }, 'A. Rivet')
    const adopted = { ...before, adopt: 'scaled', adoptedBy: 'AR', adoptedAt: expect.any(String) }
    expect(session.job.dimensions[0]).toEqual(adopted)
    await session.undo('A. Rivet')
    expect(session.job.dimensions[0]).toEqual(before)
    await session.close()
  })

  test('that is refused does not leave somebody new behind', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    const { job } = session
    await expect(session.edit(pick('M1'), 'B. Brass')).rejects.toThrow('There is a mark "M1" already')
    expect(session.job).toBe(job)
    await session.edit({ do: 'describe', set: { title: 'Quay winch' } }, 'B. Brass')
    expect(session.job.people).toBe(job.people)
    await session.close()
  })

  test('with a slip in a field name or in a time is refused', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    const slip = { do: 'add-mark', item: { ...point('M5', 1, 2), lable: 'rivet' } } as unknown as Edit
    await expect(session.edit(slip, 'AR')).rejects.toThrow('did you mean "label"?')
    const late: Edit = { do: 'add-mark', item: { ...point('M5', 1, 2), at: 'yesterday' } }
    await expect(session.edit(late, 'AR')).rejects.toThrow('ISO 8601')
    await session.close()
  })

  test('needs somebody who makes it', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await expect(session.edit(pick('M5'), ' ')).rejects.toThrow('Say who makes this edit')
    await session.close()
  })

  test('does not remove evidence, alone or among several', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    const remove: Edit = { do: 'remove-evidence', dimension: 'drum_length', id: 's1', undo: true }
    await expect(session.edit(remove, 'AR')).rejects.toThrow('withdraw-evidence')
    const several: Edit = { do: 'several', name: 'tidy', edits: [remove] }
    await expect(session.edit(several, 'AR')).rejects.toThrow('withdraw-evidence')
    await session.close()
  })

  test('keeps its turn: many asked for at once are numbered in order, share fsyncs, and a bad one harms no other', async () => {
    const { folder } = await workshopJob()
    let syncs = 0
    const session = await openJob(folder, {
      mode: 'write',
      openHistory: async (path) => {
        const handle = await openHistoryFile(path)
        return {
          write: (bytes, offset, length, position) => handle.write(bytes, offset, length, position),
          sync: () => {
            syncs += 1
            return handle.sync()
          },
          truncate: (length) => handle.truncate(length),
          read: (bytes, offset, length, position) => handle.read(bytes, offset, length, position),
          stat: (options) => handle.stat(options),
          close: () => handle.close(),
        }
      },
    })
    const asked = Array.from({ length: 40 }, (_, i) => session.edit(pick(i === 7 ? 'M1' : `N${i}`), 'AR'))
    const answers = await Promise.allSettled(asked)
    expect(answers.filter(({ status }) => status === 'rejected')).toHaveLength(1)
    expect(answers[7]?.status).toBe('rejected')
    const numbers = answers.flatMap((answer) => (answer.status === 'fulfilled' ? [answer.value.n] : []))
    expect(numbers).toEqual(Array.from({ length: 39 }, (_, i) => i + 1))
    expect(syncs).toBeLessThan(39)
    expect(await linesOf(folder)).toHaveLength(39)
    await session.close()
  })
})

describe('undo and redo', () => {
  test('take back and make again, by name, as edits of their own', async () => {
    const { folder, job } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    expect([session.undoName, session.redoName]).toEqual([undefined, undefined])
    await session.edit(pick('M5'), 'AR')
    await session.edit(pick('M6'), 'AR')
    expect(session.undoName).toBe('add mark M6')
    expect(numbered(await session.undo('AR'))).toEqual({ n: 3, name: 'undo add mark M6' })
    expect([session.undoName, session.redoName]).toEqual(['add mark M5', 'add mark M6'])
    await session.undo('AR')
    expect({ ...session.job, edition: undefined }).toEqual({ ...job, edition: undefined })
    await session.redo('AR')
    expect(numbered(await session.redo('AR'))).toEqual({ n: 6, name: 'redo add mark M6' })
    expect(markIds(session.job).slice(-2)).toEqual(['M5', 'M6'])
    const lines = await linesOf(folder)
    expect(lines[2]).toMatchObject({ n: 3, by: 'AR', undoes: { n: 2, name: 'add mark M6' } })
    expect(lines[5]).toMatchObject({ n: 6, redoes: { n: 2, name: 'add mark M6' } })
    await session.close()
  })

  test('a new edit ends what could be made again; saving does not end what can be undone', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M5'), 'AR')
    await session.undo('AR')
    await session.edit(pick('M6'), 'AR')
    expect(session.redoName).toBeUndefined()
    await expect(session.redo('AR')).rejects.toThrow('There is nothing to redo.')
    await session.save()
    expect(session.undoName).toBe('add mark M6')
    await session.undo('AR')
    expect(markIds(session.job)).not.toContain('M6')
    await expect(session.undo('AR')).rejects.toThrow('There is nothing to undo.')
    await session.close()
  })

  test('go on where they were after the process died', async () => {
    const { folder } = await workshopJob()
    const handles: HistoryHandle[] = []
    const session = await openJob(folder, {
      mode: 'write',
      openHistory: async (path) => {
        const handle = await openHistoryFile(path)
        handles.push(handle)
        return handle
      },
    })
    for (const id of ['M5', 'M6', 'M7']) await session.edit(pick(id), 'AR')
    await session.undo('AR')
    await session.undo('AR')
    await session.redo('AR')
    const { job } = session
    // As when the process dies: what it had open is closed, nothing is saved, and nobody holds the lock.
    for (const handle of handles) await handle.close()
    await rm(join(folder, '.lock'))
    const again = await openJob(folder, { mode: 'write' })
    expect(again.job).toEqual(job)
    expect([again.undoName, again.redoName]).toEqual(['add mark M6', 'add mark M7'])
    await again.redo('AR')
    await again.undo('AR')
    await again.undo('AR')
    expect(markIds(again.job)).toEqual(['M1', 'M2', 'M3', 'M4', 'M5'])
    await again.close()
  })
})

describe('what is acknowledged', () => {
  test('holds the edits exactly as the history has them: stamped, whoever was introduced, and what undo did', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write', now })
    const picked = await session.edit(pick('M5'), 'B. Brass')
    const undone = await session.undo('B. Brass')
    const redone = await session.redo('B. Brass')
    const lines = await linesOf(folder)
    const heard = [picked.introduced, picked, undone, redone].map((one) => ({ n: one?.n, edit: one?.edit }))
    expect(heard).toEqual(lines.map(({ n, edit }) => ({ n, edit })))
    expect(undone.edit).toEqual({ do: 'remove-mark', id: 'M5' })
    await session.close()
  })
})

describe('saving', () => {
  test('writes job.json with the number of its last edit, and the history stays', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M5'), 'AR')
    await session.save()
    expect(await documentOf(folder)).toEqual(session.job)
    expect((await documentOf(folder)).edition).toBe(1)
    await session.edit(pick('M6'), 'AR')
    expect((await linesOf(folder)).map(({ n }) => n)).toEqual([1, 2])
    await session.close()
    expect((await documentOf(folder)).edition).toBe(2)
    expect((await readdir(folder)).sort()).toEqual([
      '.cache',
      'history.ndjson',
      'issued',
      'job.json',
      'scans',
    ])
  })

  test('closing without an edit leaves every file as it was', async () => {
    const { folder } = await workshopJob()
    const before = await folderSnapshot(folder)
    await (await openJob(folder, { mode: 'write' })).close()
    await (await openJob(folder, { mode: 'read' })).close()
    expect(await folderSnapshot(folder)).toEqual(before)
  })

  test('what a process that died left half-written is cleared away by the next one that writes', async () => {
    const { folder } = await workshopJob()
    await writeFile(join(folder, 'job.json.0123456789abcdef.tmp'), '{')
    await writeFile(join(folder, 'scans', 'plan.png.0123456789abcdef.tmp'), 'x')
    await writeFile(join(folder, 'job.json.mine.tmp'), "a person's own file")
    await (await openJob(folder, { mode: 'read' })).close()
    expect(await readdir(folder)).toContain('job.json.0123456789abcdef.tmp')
    await (await openJob(folder, { mode: 'write' })).close()
    expect((await readdir(folder)).filter((name) => name.endsWith('.tmp'))).toEqual(['job.json.mine.tmp'])
    expect(await readdir(join(folder, 'scans'))).toEqual(['drum.png'])
  })

  test('does not overwrite a job.json that another program wrote meanwhile', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M5'), 'AR')
    const theirs = `${await readFile(join(folder, 'job.json'), 'utf8')}\n`
    await writeFile(join(folder, 'theirs'), theirs)
    await rename(join(folder, 'theirs'), join(folder, 'job.json'))
    await expect(session.save()).rejects.toThrow('was changed, replaced or removed by another program')
    await expect(session.edit(pick('M6'), 'AR')).rejects.toThrow('read-only')
    await session.close()
    expect(await readFile(join(folder, 'job.json'), 'utf8')).toBe(theirs)
    expect(await historyOf(folder)).toContain('M5')
  })

  test('nothing is written any more once the lock is gone', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M5'), 'AR')
    await rm(join(folder, '.lock'))
    await expect(session.edit(pick('M6'), 'AR')).rejects.toThrow(
      'which keeps others from writing while the job is open here, was removed or replaced',
    )
    expect(session.writable).toBe(false)
    expect(await historyOf(folder)).not.toContain('M6')
    await session.close()
  })
})

describe('a second opener', () => {
  test('gets the job read-only, is told who holds it, and can edit once it is given back', async () => {
    const { folder } = await workshopJob()
    const first = await openJob(folder, { mode: 'write', now })
    await first.edit(pick('M5'), 'AR')
    const before = await folderSnapshot(folder)
    const second = await openJob(folder, { mode: 'write' })
    expect(second.writable).toBe(false)
    expect(words(second.readOnlyBecause)).toMatch(
      /^it is open for writing by .+ \(process \d+\) since \d{1,2} [A-Z][a-z]+ 2026, \d\d:\d\d;/,
    )
    expect(second.job).toEqual(first.job)
    await expect(second.edit(pick('M6'), 'AR')).rejects.toThrow('open read-only: it is open for writing by')
    await expect(second.save()).rejects.toThrow('read-only')
    await second.close()
    expect(await folderSnapshot(folder)).toEqual(before)
    await first.close()
    const third = await openJob(folder, { mode: 'write' })
    expect(third.writable).toBe(true)
    await third.close()
    await expect(third.edit(pick('M6'), 'AR')).rejects.toThrow('is closed')
  })

  test('of a damaged lock is told so, and what to do', async () => {
    const { folder } = await workshopJob()
    await writeFile(join(folder, '.lock'), 'garbage')
    const session = await openJob(folder, { mode: 'write' })
    expect(words(session.readOnlyBecause)).toContain('somebody unknown (its .lock file is damaged)')
    expect(words(session.readOnlyBecause)).toContain(`delete ${join(folder, '.lock')}`)
    await session.close()
    expect(await readFile(join(folder, '.lock'), 'utf8')).toBe('garbage')
  })
})

describe('when the disk refuses', () => {
  interface Faults {
    write?: 'refuse' | 'half'
    sync?: boolean
    truncate?: boolean
  }
  const fault = (code: string): Error => Object.assign(new Error(code), { code })

  async function faultySession(faults: Faults) {
    const { folder } = await workshopJob()
    const session = await openJob(folder, {
      mode: 'write',
      openHistory: async (path) => {
        const handle = await openHistoryFile(path)
        const faulty: HistoryHandle = {
          async write(bytes, offset, length, position) {
            if (faults.write === undefined) return handle.write(bytes, offset, length, position)
            await handle.write(bytes, offset, Math.floor(length / 2), position)
            throw fault('ENOSPC')
          },
          async sync() {
            if (faults.sync === true) throw fault('EIO')
            await handle.sync()
          },
          async truncate(length) {
            if (faults.truncate === true) throw fault('EIO')
            await handle.truncate(length)
          },
          read: (bytes, offset, length, position) => handle.read(bytes, offset, length, position),
          stat: (options) => handle.stat(options),
          close: () => handle.close(),
        }
        return faulty
      },
    })
    return { folder, session }
  }

  test('a full disk refuses the edit in a sentence, leaves no torn line, and the next edit goes through', async () => {
    const faults: Faults = {}
    const { folder, session } = await faultySession(faults)
    await session.edit(pick('M5'), 'AR')
    const sound = await historyOf(folder)
    faults.write = 'half'
    const { job } = session
    const refused = await Promise.allSettled([session.edit(pick('M6'), 'AR'), session.edit(pick('M7'), 'AR')])
    for (const answer of refused) {
      expect(answer.status === 'rejected' && String(answer.reason)).toMatch(
        /The edit was not made because .*history\.ndjson could not be written \(the disk is full\)/,
      )
    }
    expect(session.job).toBe(job)
    expect(session.undoName).toBe('add mark M5')
    expect(await historyOf(folder)).toBe(sound)
    delete faults.write
    expect(numbered(await session.edit(pick('M6'), 'AR'))).toEqual({ n: 2, name: 'add mark M6' })
    await session.close()
    expect(markIds(await documentOf(folder)).slice(-2)).toEqual(['M5', 'M6'])
  })

  test("a torn line that can't be cut makes the job read-only, and it is dropped on the next opening", async () => {
    const faults: Faults = {}
    const { folder, session } = await faultySession(faults)
    await session.edit(pick('M5'), 'AR')
    faults.write = 'half'
    faults.truncate = true
    await expect(session.edit(pick('M6'), 'AR')).rejects.toThrow('the job is read-only from here on')
    expect(session.writable).toBe(false)
    await expect(session.edit(pick('M7'), 'AR')).rejects.toThrow('read-only')
    await session.close()
    const again = await openJob(folder, { mode: 'write' })
    expect(again.notices.map(inWords).join()).toContain('was cut short while it was written')
    expect(markIds(again.job).at(-1)).toBe('M5')
    await again.close()
  })

  test('an fsync that fails is not an acknowledgement', async () => {
    const faults: Faults = {}
    const { folder, session } = await faultySession(faults)
    await session.edit(pick('M5'), 'AR')
    faults.sync = true
    await expect(session.edit(pick('M6'), 'AR')).rejects.toThrow('the disk reports an error')
    expect(markIds(session.job).at(-1)).toBe('M5')
    await session.close()
    const again = await openJob(folder, { mode: 'read' })
    expect(markIds(again.job).at(-1)).toBe('M5')
  })

  test('a history that another program wrote to is not written over', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M5'), 'AR')
    await appendFile(join(folder, 'history.ndjson'), 'theirs\n')
    const found = await historyOf(folder)
    await expect(session.edit(pick('M6'), 'AR')).rejects.toThrow(
      'was changed, replaced or removed by another program',
    )
    await session.close()
    expect(await historyOf(folder)).toBe(found)
  })
})

describe('a folder that holds no sound job', () => {
  test.each([
    ['is not there', async (folder: string) => rm(folder, { recursive: true }), 'it does not exist'],
    ['holds no job.json', async (folder: string) => rm(join(folder, 'job.json')), 'it holds no job.json'],
    ['has an empty job.json', async (folder: string) => writeFile(join(folder, 'job.json'), ''), 'is empty'],
    [
      'has a broken job.json',
      async (folder: string) => writeFile(join(folder, 'job.json'), '{"a":'),
      'not JSON',
    ],
    [
      'has a job.json of another encoding',
      async (folder: string) => writeFile(join(folder, 'job.json'), Buffer.from([0xff, 0xfe, 0x7b])),
      'not UTF-8',
    ],
    [
      'is of a newer version',
      async (folder: string) => {
        const text = await readFile(join(folder, 'job.json'), 'utf8')
        await writeFile(join(folder, 'job.json'), text.replace('"version": 2', '"version": 3'))
      },
      'newer Scantling (format version 3',
    ],
    [
      'names a scan outside the job',
      async (folder: string) => {
        const text = await readFile(join(folder, 'job.json'), 'utf8')
        await writeFile(join(folder, 'job.json'), text.replace('"drum.png"', '"../../drum.png"'))
      },
      'file of the scan',
    ],
  ])('%s: it is refused by name', async (_, spoil, what) => {
    const { folder } = await workshopJob()
    await spoil(folder)
    for (const mode of ['read', 'write'] as const) {
      const refused = await openJob(folder, { mode }).catch((error: unknown) => error)
      expect(refused).toBeInstanceOf(ServiceError)
      expect(String(refused)).toContain(folder)
      expect(String(refused)).toContain(what)
    }
  })
})
