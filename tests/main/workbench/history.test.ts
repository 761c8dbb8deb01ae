import { describe, expect, test } from 'vitest'
import { aWorkbench, type BenchUnderTest } from '../fixtures/a-workbench.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const MINUTE = 60_000

/** A bench with the workshop's job, where each edit is a minute later than the one before. */
async function atWork(): Promise<Pick<BenchUnderTest, 'ask' | 'refused' | 'bench'>> {
  let moment = Date.parse('2026-03-09T10:00:00Z')
  const now = (): Date => {
    moment += MINUTE
    return new Date(moment)
  }
  const { bench, ask, refused } = await aWorkbench({ now })
  await bench.openFolder((await workshopJob()).folder)
  return { bench, ask, refused }
}

describe('the history of one thing', () => {
  test('is told with who, when and what it was before, the newest first, as many as are wanted', async () => {
    const { ask } = await atWork()
    const dimension = 'drum_half'
    await ask('edit', { edit: { do: 'adopt', dimension, adopt: 'derived' }, by: 'AR' })
    await ask('edit', { edit: { do: 'change-view', id: 'V1', set: { name: 'Front' } }, by: 'AR' })
    await ask('edit', { edit: { do: 'adopt', dimension, adopt: 'mean' }, by: 'B. Brass' })
    await ask('edit', {
      edit: { do: 'rename-dimension', name: dimension, to: 'drum_middle' },
      by: 'B. Brass',
    })
    const of = { kind: 'dimension', id: 'drum_middle' } as const
    const whole = await ask('history', { of, limit: 10 })
    expect(whole).toEqual({
      more: false,
      entries: [
        { n: 5, at: expect.any(String), who: 'B. Brass', did: ['renamed drum_half to drum_middle'] },
        {
          n: 4,
          at: expect.any(String),
          who: 'B. Brass',
          did: ['adopted mean for drum_half (before: derived, by A. Rivet)'],
        },
        {
          n: 1,
          at: expect.any(String),
          who: 'A. Rivet',
          did: ['adopted derived for drum_half (before: left to the rules, which take evidence d1 first)'],
        },
      ],
    })
    expect(await ask('history', { of, limit: 2 })).toEqual({ more: true, entries: whole.entries.slice(0, 2) })
    expect(await ask('history', { of, limit: 3 })).toEqual(whole)
    const view = await ask('history', { of: { kind: 'view', id: 'V1' }, limit: 5 })
    expect(view.entries.map(({ did }) => did)).toEqual([['changed view “Front”: name “Elevation” → “Front”']])
  })

  test('is refused of what is not there, and of another job', async () => {
    const { ask, refused } = await atWork()
    const of = { kind: 'dimension', id: 'collar' }
    expect(await refused('history', { of, limit: 5 })).toBe(
      'There is no dimension "collar" in the job that is open: it was renamed or removed.',
    )
    expect(await refused('history', { of: { kind: 'view', id: 'V1' }, limit: 5, job: 'other' })).toMatch(
      /is no longer the one that is open/,
    )
    await ask('close-job', {})
    expect(await refused('history', { of, limit: 5 })).toBe('No job is open: open one first.')
  })

  test('is told of a job that another holds as well', async () => {
    const { folder } = await workshopJob()
    const first = await aWorkbench()
    await first.bench.openFolder(folder)
    const edit = { do: 'change-sheet', id: 'S1', set: { title: 'Drum and shaft' } } as const
    await first.ask('edit', { edit, by: 'AR' })
    const second = await aWorkbench()
    expect((await second.bench.openFolder(folder)).opened?.writable).toBe(false)
    const told = await second.ask('history', { of: { kind: 'sheet', id: 'S1' }, limit: 5 })
    expect(told.entries.map(({ who, did }) => [who, ...did])).toEqual([
      ['A. Rivet', 'changed sheet “Drum and shaft”: title “Drum” → “Drum and shaft”'],
    ])
  })
})
