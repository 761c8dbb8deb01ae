import { appendFile, readFile, truncate, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import type { HistoryLine } from '../../../src/core/job/history/history-line.ts'
import { chainLine } from '../../../src/main/services/job-folder/history/chain-lines.ts'
import { writeLine } from '../../../src/main/services/job-folder/history/line-text.ts'
import { linesBack } from '../../../src/main/services/job-folder/history/lines-back.ts'
import { NOTHING } from '../../../src/main/services/job-folder/history/read-tail.ts'
import { type Began, historyBack } from '../../../src/main/services/job-folder/history-back.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { jobOfTheFormBefore, workshopJob } from '../fixtures/workshop-job.ts'

const AT = '2026-03-09T10:05:00.000Z'

const noted = (n: number, note: string): HistoryLine => {
  const edit: Edit = { do: 'change-dimension', name: 'drum_half', set: { note } }
  return { n, at: AT, by: 'AR', edit, back: edit }
}

/** A history of lines whose notes are as long as is said, without a beginning; `together`: the first of each write. */
async function historyOf(lengths: readonly number[], together: readonly number[] = []): Promise<string> {
  const path = join(await temporaryFolder(), 'history.ndjson')
  let tip = NOTHING
  let text = ''
  for (const [i, length] of lengths.entries()) {
    const chained = chainLine(noted(i, 'x'.repeat(length)), { below: null }, tip, together[i])
    text += chained.text
    tip = chained.tip
  }
  await writeFile(path, text)
  return path
}

async function numbersIn(path: string, looks?: (bytes: Buffer) => boolean): Promise<number[]> {
  const numbers: number[] = []
  for await (const { n } of linesBack(path, looks)) numbers.push(n)
  return numbers
}

const backFrom = (n: number): number[] => Array.from({ length: n + 1 }, (_, i) => n - i)

async function all(folder: string): Promise<(HistoryLine | Began)[]> {
  const lines: (HistoryLine | Began)[] = []
  for await (const line of historyBack(folder)) lines.push(line)
  return lines
}

describe('a history that is read back', () => {
  test('has every line, the newest first, wherever what is read in one go ends', async () => {
    // Lines of all lengths over some megabytes, one longer than what is read in one go.
    const lengths = Array.from({ length: 400 }, (_, i) => (i === 200 ? 3_000_000 : (i * 7919) % 20_011))
    expect(await numbersIn(await historyOf(lengths))).toEqual(backFrom(399))
  })

  test('is nothing where there is none, or it is empty', async () => {
    const folder = await temporaryFolder()
    expect(await numbersIn(join(folder, 'history.ndjson'))).toEqual([])
    await writeFile(join(folder, 'history.ndjson'), '')
    expect(await numbersIn(join(folder, 'history.ndjson'))).toEqual([])
  })

  test('ends where opening finds that it does: before what is cut short, and whole lines written after that with it', async () => {
    const path = await historyOf([5, 5, 5, 5, 5], [0, 1, 2, 2, 2])
    expect(await numbersIn(path)).toEqual(backFrom(4))
    const { length } = await readFile(path)
    await truncate(path, length - 3)
    expect(await numbersIn(path)).toEqual(backFrom(3))
    const other = await historyOf([5, 5, 5, 5], [0, 1, 2, 2])
    const bytes = await readFile(other)
    // The first of two that went together never reached the disk; the second did.
    const lines = bytes.toString().trimEnd().split('\n')
    await writeFile(
      other,
      `${[lines[0], lines[1], '\0'.repeat(lines[2]?.length ?? 0), lines[3]].join('\n')}\n`,
    )
    expect(await numbersIn(other)).toEqual(backFrom(1))
  })

  test('passes over lines that are not wanted without reading them', async () => {
    const path = await historyOf([1, 2, 3, 4, 5])
    const looked: number[] = []
    const third = (bytes: Buffer): boolean => {
      looked.push(bytes.length)
      return bytes.includes('"xxx"')
    }
    // The last line is always read: it tells where the whole ones end.
    expect(await numbersIn(path, third)).toEqual([4, 2])
    expect(looked).toHaveLength(4)
  })

  test('of a job gives its edits and at the end the job as it began', async () => {
    const { folder, job } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit({ do: 'adopt', dimension: 'drum_length', adopt: 'scaled' }, 'A. Rivet')
    await session.undo('A. Rivet')
    const lines = await all(folder)
    expect(lines.map(({ n }) => n)).toEqual([2, 1, 0])
    expect(lines[0]).toMatchObject({ by: 'AR', undoes: { n: 1 } })
    expect(lines[2]).toMatchObject({ began: { dimensions: job.dimensions }, anew: false })
    await session.close()
    expect(await all(folder)).toEqual(lines)
  })

  test('of a folder of the form before is that of its journal, and changes nothing', async () => {
    const edit: Edit = { do: 'adopt', dimension: 'drum_length', adopt: 'scaled' }
    const { folder, job } = await jobOfTheFormBefore(`${JSON.stringify({ n: 1, at: AT, by: 'AR', edit })}\n`)
    const before = await readFile(join(folder, 'job.json'), 'utf8')
    const lines = await all(folder)
    expect(lines).toMatchObject([
      { n: 1, edit, back: { do: 'adopt', dimension: 'drum_length' } },
      { began: job },
    ])
    expect(await readFile(join(folder, 'job.json'), 'utf8')).toBe(before)
  })

  test('says which line it does not understand', async () => {
    const { folder } = await workshopJob()
    const path = join(folder, 'history.ndjson')
    const { text } = writeLine({
      n: 1,
      at: AT,
      by: 'AR',
      previous: '',
      edit: { do: 'knot' },
      back: {},
      below: null,
    })
    await appendFile(path, text)
    await expect(all(folder)).rejects.toThrow(/^Line 1 of .*history\.ndjson can't be told/)
  })
})
