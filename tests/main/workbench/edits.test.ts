import { readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Committed } from '../../../src/contract/bench-state.ts'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { applyEdit, type Edit } from '../../../src/core/job/edits/edit.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { point } from '../fixtures/picked-point.ts'
import { settled } from '../fixtures/settled.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const pick = (id: string): Edit => ({ do: 'add-mark', item: point(id, 10, 20) })
const keptOf = (events: readonly HostEvent[]): Committed[] =>
  events.flatMap((event) => (event.kind === 'committed' ? [event.committed] : []))

describe('an edit', () => {
  test('is answered with what is on disk, which takes a window from the job before to the job after', async () => {
    const { bench, ask } = await aWorkbench({ now: () => new Date('2026-03-01T14:02:00Z') })
    const { folder } = await workshopJob()
    const opened = (await bench.openFolder(folder)).opened
    if (opened === null) throw new Error('not open')
    const answers = [
      await ask('edit', { edit: pick('M5'), by: 'B. Brass' }),
      await ask('edit', { edit: { do: 'repeat-pick', mark: 'M1', pixel: pixel(50, 51) }, by: 'AR' }),
      await ask('undo', { by: 'AR' }),
      await ask('undo', { by: 'AR', theirs: true }),
      await ask('redo', { by: 'AR' }),
    ]
    expect(answers.map(({ name }) => name)).toEqual([
      'add mark M5',
      'pick mark M1 again',
      'undo pick mark M1 again',
      'undo add mark M5',
      'redo add mark M5',
    ])
    let { job } = opened
    for (const { edits } of answers) {
      for (const { n, edit } of edits) job = { ...applyEdit(job, edit).job, edition: n }
    }
    const now = (await ask('look', {})).opened
    expect(job).toEqual(now?.job)
    expect(now).toMatchObject({ n: 6, savedAt: '2026-03-01T14:02:00.000Z', undoName: 'add mark M5' })

    const [first] = answers
    expect(first?.edits.map(({ n }) => n)).toEqual([1, 2])
    const id = expect.stringMatching(/^p-.{13}$/)
    const entered = { by: id, at: '2026-03-01T14:02:00.000Z' }
    expect(first?.edits[0]?.edit).toEqual({ do: 'add-person', item: { id, name: 'B. Brass', ...entered } })
    expect(first).toMatchObject({ savedAt: '2026-03-01T14:02:00.000Z', undoName: 'add mark M5' })
    const lines = (await readFile(join(folder, 'history.ndjson'), 'utf8')).trim().split('\n').slice(1)
    const kept = lines.map((line) => JSON.parse(line) as { n: number; edit: Edit })
    expect(answers.flatMap(({ edits }) => edits)).toEqual(kept.map(({ n, edit }) => ({ n, edit })))
  })

  test('is heard by every window, in order, and by none that has ended listening', async () => {
    const { bench, ask, events } = await aWorkbench()
    const { folder } = await workshopJob()
    const other: HostEvent[] = []
    const end = bench.listen((event) => other.push(event))
    bench.listen(() => {
      throw new Error('a window that has gone')
    })
    await bench.openFolder(folder)
    const answers = await Promise.all(
      [5, 6, 7, 8].map((number) => ask('edit', { edit: pick(`M${number}`), by: 'AR' })),
    )
    expect(keptOf(events)).toEqual(answers)
    expect(keptOf(other)).toEqual(answers)
    expect(answers.flatMap(({ edits }) => edits.map(({ n }) => n))).toEqual([1, 2, 3, 4])
    end()
    await ask('undo', { by: 'AR' })
    expect(keptOf(events)).toHaveLength(5)
    expect(keptOf(other)).toHaveLength(4)
  })

  test('that is refused is told in a sentence and one line of the log; job and history are as they were', async () => {
    const { bench, ask, refused, events, log } = await aWorkbench()
    const { folder, job } = await workshopJob()
    await bench.openFolder(folder)
    expect(await refused('edit', { edit: pick('M1'), by: 'AR' })).toContain('There is a mark "M1" already')
    expect(await refused('undo', { by: 'AR' })).toBe('There is nothing to undo.')
    expect(await refused('redo', { by: 'AR' })).toBe('There is nothing to redo.')
    expect(log).toHaveLength(3)
    expect((await ask('look', {})).opened).toMatchObject({ job, n: 0, savedAt: null })
    expect(keptOf(events)).toEqual([])
  })

  test('that is meant for a job that another window has closed is not made in the one that is open now', async () => {
    const { bench, ask, refused, handOver } = await aWorkbench()
    const [meant, other] = [await workshopJob(), await workshopJob()]
    const job = (await bench.openFolder(meant.folder)).opened?.id
    await ask('edit', { edit: pick('M5'), by: 'AR', job })
    await bench.openFolder(other.folder)
    await ask('edit', { edit: pick('M6'), by: 'AR' })
    for (const [name, args] of [
      ['edit', { edit: pick('M7') }],
      ['undo', {}],
      ['redo', {}],
      ['add-sheets', { upload: await handOver(other.scan) }],
    ] as const) {
      expect(await refused(name, { ...args, by: 'AR', job })).toBe(
        `The job in ${meant.folder} is no longer the one that is open, so nothing was done: ` +
          'open it again and do this anew.',
      )
    }
    const { opened } = await ask('look', {})
    expect([opened?.place, opened?.n, opened?.job.sheets.length]).toEqual([other.folder, 1, 1])
  })

  test('that is under way while the job is closed comes to disk, and nothing is saved or told after it', async () => {
    const { bench, ask, log, events } = await aWorkbench({ quiet: 50 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const [{ edits }] = await Promise.all([ask('edit', { edit: pick('M5'), by: 'AR' }), ask('close-job', {})])
    expect(edits.map(({ n }) => n)).toEqual([1])
    expect(parseJobText(await readFile(join(folder, 'job.json'), 'utf8')).edition).toBe(1)
    await new Promise((resolve) => setTimeout(resolve, 200))
    expect(log).toEqual([])
    expect(events.map(({ kind }) => kind)).toEqual(['bench', 'committed', 'bench'])
  })

  test('that finds the folder taken away turns the job read-only, and every window hears why', async () => {
    const { bench, refused, events } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await rm(join(folder, '.lock'))
    expect(await refused('edit', { edit: pick('M5'), by: 'AR' })).toContain(
      'which keeps others from writing while the job is open here, was removed or replaced',
    )
    await settled(() => events.length === 2)
    expect(events[1]).toMatchObject({
      kind: 'bench',
      state: {
        opened: {
          writable: false,
          readOnlyBecause: expect.stringContaining(
            'which keeps others from writing while the job is open here, was removed or replaced',
          ),
        },
      },
    })
  })
})

describe('job.json', () => {
  const editionOf = async (folder: string): Promise<number | undefined> =>
    parseJobText(await readFile(join(folder, 'job.json'), 'utf8')).edition

  test('is written anew when no edit was made for a while, not while edits come', async () => {
    const { bench, ask } = await aWorkbench({ quiet: 300 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    for (const id of ['M5', 'M6', 'M7']) {
      await ask('edit', { edit: pick(id), by: 'AR' })
      expect(await editionOf(folder)).toBe(0)
    }
    await settled(async () => (await editionOf(folder)) === 3)
    expect((await ask('look', {})).opened).toMatchObject({ writable: true, undoName: 'add mark M7' })
  })

  test("that can't be written is told to every window, logged, and nothing is lost", async () => {
    const { bench, ask, events, log } = await aWorkbench({ quiet: 50 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const theirs = `${await readFile(join(folder, 'job.json'), 'utf8')}\n`
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    await writeFile(join(folder, 'job.json'), theirs)
    await settled(() => events.length === 3)
    const notice = expect.stringContaining('was changed, replaced or removed by another program')
    expect(events[2]).toMatchObject({
      kind: 'bench',
      state: { opened: { writable: false, readOnlyBecause: notice, notices: [] } },
    })
    expect(log).toEqual([expect.stringMatching(/^saving failed: /)])
    expect(await readFile(join(folder, 'job.json'), 'utf8')).toBe(theirs)
    expect(await readFile(join(folder, 'history.ndjson'), 'utf8')).toContain('M5')
  })
})
