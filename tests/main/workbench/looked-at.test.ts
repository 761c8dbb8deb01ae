import { appendFile, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import { aWorkbench, type BenchUnderTest } from '../fixtures/a-workbench.ts'
import { point } from '../fixtures/picked-point.ts'
import { settled } from '../fixtures/settled.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const pick = (id: string): Edit => ({ do: 'add-mark', item: point(id, 10, 20) })

const EVE = 'p-23456789bhtkz'
const READING = 'e-23456789b9kdt'

/** A workbench that is closed once the test has ended: what it opened is looked at by nobody then. */
async function aClosedBench(options: Parameters<typeof aWorkbench>[0] = {}): Promise<BenchUnderTest> {
  const made = await aWorkbench(options)
  onTestFinished(() => made.bench.close())
  return made
}

/** Two benches on one folder: the first has it, the second looks on. */
async function twoBenches(): Promise<{
  folder: string
  first: BenchUnderTest
  second: BenchUnderTest
  job: string
}> {
  const { folder } = await workshopJob()
  const first = await aClosedBench()
  await first.bench.openFolder(folder)
  const second = await aClosedBench()
  const { opened } = await second.bench.openFolder(folder)
  expect(opened).toMatchObject({ writable: false, n: 0 })
  return { folder, first, second, job: opened?.id ?? '' }
}

describe('a job that somebody else has', () => {
  test('has a history with the names of whoever and whatever came to it since it was opened here', async () => {
    const { first, second } = await twoBenches()
    const dimension = 'drum_half'
    await first.ask('edit', { edit: { do: 'add-person', item: { id: EVE, name: 'Eve' } }, by: 'AR' })
    await first.ask('edit', {
      edit: {
        do: 'add-evidence',
        dimension,
        item: { id: READING, number: 1, basis: 'found', readings: ['2 in'] },
      },
      by: EVE,
    })
    await first.ask('edit', { edit: { do: 'adopt', dimension, adopt: READING }, by: EVE })
    await first.ask('edit', { edit: { do: 'rename-dimension', name: dimension, to: 'drum_middle' }, by: EVE })
    await first.ask('edit', { edit: { do: 'adopt', dimension: 'drum_middle', adopt: 'mean' }, by: EVE })
    const { entries } = await second.ask('history', { of: { kind: 'dimension', id: dimension }, limit: 9 })
    expect(entries.map(({ who, did }) => [who, ...did])).toEqual([
      ['Eve', 'adopted mean for drum_middle (before: measured 1)'],
      ['Eve', 'renamed drum_half to drum_middle'],
      [
        'Eve',
        'adopted measured 1 for drum_half: 2 in (before: left to the rules, which take evidence d1 first)',
      ],
      ['Eve', 'added measured 1 of drum_half: 2 in'],
    ])
  })

  test('has a history of what is gone from it by now', async () => {
    const { first, second } = await twoBenches()
    const item = { name: 'collar', label: 'Collar', kind: 'length', evidence: [] } as const
    await first.ask('edit', { edit: { do: 'add-dimension', item: { ...item, evidence: [] } }, by: 'AR' })
    const job = lastOpened(second)?.id ?? ''
    await second.ask('look-again', { job })
    await first.ask('edit', { edit: { do: 'add-person', item: { id: EVE, name: 'Eve' } }, by: 'AR' })
    await first.ask('edit', { edit: { do: 'remove-dimension', name: 'collar' }, by: EVE })
    await first.ask('edit', { edit: { do: 'add-dimension', item: { ...item, evidence: [] } }, by: 'AR' })
    const { entries } = await second.ask('history', { of: { kind: 'dimension', id: 'collar' }, limit: 9 })
    expect(entries.map(({ who, did }) => [who, ...did])).toEqual([
      ['Eve', 'removed collar: Collar'],
      ['A. Rivet', 'added collar: Collar'],
    ])
  })

  test('is said to have gone on, is read anew when that is asked for, and says so when it is free', async () => {
    const { folder, first, second, job } = await twoBenches()
    await first.ask('edit', { edit: pick('M5'), by: 'AR' })
    await settled(() => second.events.at(-1)?.kind === 'bench' && wentOn(second) !== undefined)
    expect(wentOn(second)).toBe(
      'The job went on since it was read here: what is shown is as of edit 0. Look again to see it as it is now.',
    )
    const looked = await second.ask('look-again', { job })
    expect(looked.opened).toMatchObject({ writable: false, n: 1 })
    expect(looked.opened).not.toHaveProperty('wentOn')
    expect(looked.opened?.job.marks.at(-1)?.id).toBe('M5')

    await first.ask('edit', { edit: pick('M6'), by: 'AR' })
    await first.ask('close-job', {})
    await settled(() => lastOpened(second)?.free === true)
    expect(lastOpened(second)).toMatchObject({
      writable: false,
      readOnlyBecause:
        'The job is open read-only: nobody else has it any more; open it for writing to edit it.',
      wentOn: expect.stringContaining('edit 1'),
    })
    const ours = await second.ask('look-again', { job })
    expect(ours.opened).toMatchObject({ writable: true, n: 2 })
    expect(ours.opened).not.toHaveProperty('readOnlyBecause')
    expect(ours.opened).not.toHaveProperty('free')
    await second.ask('edit', { edit: pick('M7'), by: 'AR', job })
    expect(await readFile(join(folder, 'history.ndjson'), 'utf8')).toContain('"M7"')
  })
})

const lastOpened = ({ events }: BenchUnderTest) => {
  const last = events.findLast((event) => event.kind === 'bench')
  return last?.kind === 'bench' ? last.state.opened : null
}
const wentOn = (bench: BenchUnderTest): string | undefined => lastOpened(bench)?.wentOn

describe('a job that others touch while it is open', () => {
  test('turns read-only before the edit is refused, and says why once', async () => {
    const { bench, events } = await aClosedBench({ quiet: 50 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await bench.ask('edit', { edit: pick('M5'), by: 'AR' })
    await appendFile(join(folder, 'history.ndjson'), 'theirs\n')
    const reply = await bench.ask('edit', { edit: pick('M6'), by: 'AR' })
    expect(reply).toMatchObject({ ok: false, reason: { code: 'job-folder.read-only' } })
    const last = events.at(-1)
    const opened = last?.kind === 'bench' ? last.state.opened : null
    expect(opened?.writable).toBe(false)
    expect(opened?.notices).toEqual([])
    expect(reply).toMatchObject({ sentence: opened?.readOnlyBecause })
  })

  test('also where that is found as it is saved', async () => {
    const { bench, events } = await aClosedBench({ quiet: 50 })
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await bench.ask('edit', { edit: pick('M5'), by: 'AR' })
    await rm(join(folder, 'history.ndjson'))
    await settled(() => {
      const last = events.at(-1)
      return last?.kind === 'bench' && last.state.opened?.writable === false
    })
    const last = events.at(-1)
    expect(last?.kind === 'bench' && last.state.opened?.notices).toEqual([])
  })

  test('is read anew when that is asked for; where it can not be, what was shown stays', async () => {
    const { bench, ask, refused } = await aClosedBench()
    const { folder } = await workshopJob()
    const id = (await bench.openFolder(folder)).opened?.id ?? ''
    await ask('edit', { edit: pick('M5'), by: 'AR' })
    const history = await readFile(join(folder, 'history.ndjson'))
    await rm(join(folder, 'history.ndjson'))
    await refused('edit', { edit: pick('M6'), by: 'AR' })
    expect(await refused('look-again', { job: id })).toContain('is gone')
    expect((await ask('look', {})).opened).toMatchObject({ n: 1, writable: false })
    await appendFile(join(folder, 'history.ndjson'), history)
    expect((await ask('look-again', { job: id })).opened).toMatchObject({ n: 1, writable: true })
  })
})
