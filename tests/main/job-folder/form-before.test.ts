import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { point } from '../fixtures/picked-point.ts'
import { jobOfTheFormBefore } from '../fixtures/workshop-job.ts'

const pick = (id: string): Edit => ({ do: 'add-mark', item: point(id, 10, 20) })
const markIds = (job: Job): string[] => job.marks.map(({ id }) => id)
const documentOf = async (folder: string): Promise<Job> =>
  parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))

describe('a folder of the form before, with a journal', () => {
  const line = (n: number, edit: unknown): string =>
    `${JSON.stringify({ n, at: '2026-03-01T08:00:00Z', by: 'AR', edit })}\n`
  const journal = async (text: string | Buffer): Promise<string> => {
    const { folder } = await jobOfTheFormBefore(text)
    return folder
  }

  test.each([
    ['without its newline', line(2, pick('M6')).trimEnd()],
    ['cut in the middle', line(2, pick('M6')).slice(0, 30)],
    ['of one brace', '{'],
    ['of zeros', '\0\0\0\0'],
  ])('a last line %s is dropped with a warning, and cut off before the next edit', async (_, torn) => {
    const folder = await journal(line(1, pick('M5')) + torn)
    const before = await folderSnapshot(folder)
    const reader = await openJob(folder, { mode: 'read' })
    expect(reader.notices.map(inWords).join()).toMatch(
      /^The last line of .*journal\.ndjson \(line 2\) was not completely written/,
    )
    expect(markIds(reader.job).at(-1)).toBe('M5')
    await reader.close()
    expect(await folderSnapshot(folder)).toEqual(before)
    const writer = await openJob(folder, { mode: 'write' })
    await writer.edit(pick('M7'), 'AR')
    const lines = (await readFile(join(folder, 'history.ndjson'), 'utf8')).trimEnd().split('\n')
    expect(lines.map((text) => JSON.parse(text).n)).toEqual([0, 1, 2])
    await writer.close()
    expect(markIds(await documentOf(folder)).slice(-2)).toEqual(['M5', 'M7'])
  })

  test('a last line cut inside a letter of several bytes is dropped too', async () => {
    const bytes = Buffer.from(line(1, { do: 'describe', set: { title: 'Ø drum' } }))
    const folder = await journal(bytes.subarray(0, bytes.indexOf(0xc3) + 1))
    const session = await openJob(folder, { mode: 'read' })
    expect(session.notices).toHaveLength(1)
    expect(session.job.title).toBe('Drum of the chain ferry')
  })

  test.each([
    [
      'a bad line in the middle',
      `${line(1, pick('M5'))}{"n":2\n${line(3, pick('M6'))}`,
      2,
      'not a line of JSON',
    ],
    [
      'a last line that is whole, newline and all, and no JSON',
      `${line(1, pick('M5'))}${line(2, pick('M6')).slice(0, 30)}\n`,
      2,
      'not a line of JSON',
    ],
    ['a gap in the numbers', line(1, pick('M5')) + line(3, pick('M6')), 2, 'edits are missing'],
    ['a number twice', line(1, pick('M5')) + line(1, pick('M6')), 2, 'edit 1 follows edit 1'],
    ['a first edit that is not the next', line(2, pick('M5')), 1, 'edit 2 follows edit 0'],
    [
      "an edit that can't be applied",
      line(1, pick('M5')) + line(2, pick('M1')),
      2,
      "edit 2 can't be applied",
    ],
    ['an edit of no known kind', line(1, { do: 'polish' }), 1, "edit 1 can't be applied"],
    ['a line without its author', '{"n":1,"at":"","edit":{}}\n', 1, 'who made the edit'],
    ['a line without a number', '{"edit":{}}\n', 1, 'no edit number'],
    ['a line that is a bare word', `null\n${line(1, pick('M5'))}`, 1, 'no edit number'],
  ])('%s is refused with the line, and nothing is changed', async (_, text, number, what) => {
    const folder = await journal(text)
    const before = await folderSnapshot(folder)
    for (const mode of ['read', 'write'] as const) {
      const refused = await openJob(folder, { mode }).catch((error: unknown) => error)
      expect(refused).toBeInstanceOf(ServiceError)
      expect(String(refused)).toContain(`journal.ndjson, line ${number}: `)
      expect(String(refused)).toContain(what)
    }
    expect(await folderSnapshot(folder)).toEqual(before)
  })
})

describe('with the first edit', () => {
  test('it is carried over: its edits stay, its files are kept, and undo goes back into them', async () => {
    const at = '2026-03-01T08:00:00Z'
    const lines = [
      { n: 1, at, by: 'AR', edit: pick('M5') },
      { n: 2, at, by: 'AR', edit: pick('M6') },
      { n: 3, at, by: 'AR', edit: { do: 'remove-mark', id: 'M6' }, undoes: { n: 2, name: 'add mark M6' } },
    ]
    const { folder, job } = await jobOfTheFormBefore(
      lines.map((line) => `${JSON.stringify(line)}\n`).join(''),
    )
    const before = {
      job: await readFile(join(folder, 'job.json'), 'utf8'),
      journal: await readFile(join(folder, 'journal.ndjson'), 'utf8'),
    }
    const session = await openJob(folder, { mode: 'write' })
    expect([session.undoName, session.redoName]).toEqual(['add mark M5', 'add mark M6'])
    await session.redo('AR')
    expect((await readdir(folder)).sort()).toEqual([
      '.cache',
      '.lock',
      'before-history',
      'history.ndjson',
      'issued',
      'job.json',
      'scans',
    ])
    expect(await readFile(join(folder, 'before-history', 'job.json'), 'utf8')).toBe(before.job)
    expect(await readFile(join(folder, 'before-history', 'journal.ndjson'), 'utf8')).toBe(before.journal)
    await session.close()
    const again = await openJob(folder, { mode: 'write' })
    expect(markIds(again.job)).toEqual(['M1', 'M2', 'M3', 'M4', 'M5', 'M6'])
    await again.undo('AR')
    await again.undo('AR')
    expect({ ...again.job, id: undefined, edition: undefined }).toEqual({
      ...job,
      id: undefined,
      edition: undefined,
    })
    expect(again.undoName).toBeUndefined()
    expect(again.redoName).toBe('add mark M5')
    await again.close()
  })

  test('wherever that is cut off, the next opening finds every edit', async () => {
    const at = '2026-03-01T08:00:00Z'
    const journal = `${JSON.stringify({ n: 1, at, by: 'AR', edit: pick('M5') })}\n`
    const { folder } = await jobOfTheFormBefore(journal)
    const document = await readFile(join(folder, 'job.json'), 'utf8')
    const session = await openJob(folder, { mode: 'write' })
    await session.edit(pick('M6'), 'AR')
    await session.close()
    // As it stood after the history was written, and before job.json was.
    await writeFile(join(folder, 'job.json'), document)
    await writeFile(join(folder, 'journal.ndjson'), journal)
    const again = await openJob(folder, { mode: 'write' })
    expect(again.notices).toEqual([])
    expect(markIds(again.job).slice(-2)).toEqual(['M5', 'M6'])
    await again.edit(pick('M7'), 'AR')
    await again.close()
    expect(markIds(await documentOf(folder)).slice(-3)).toEqual(['M5', 'M6', 'M7'])
  })
})
