import { join } from 'node:path'
import { PassThrough, Readable, Writable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { tellHistory } from '../../../src/main/cli/actions/tell-history.ts'
import { Output } from '../../../src/main/cli/output/output.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { scantling, scantlingGiven } from '../fixtures/command-line.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { jobOfTheFormBefore, workshopJob } from '../fixtures/workshop-job.ts'

/** The job of a workshop in which two people did something. */
async function workedOn(): Promise<string> {
  const { folder } = await workshopJob()
  const mark = { id: 'M9', sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: [60, 60] }
  const evidence = { id: 's2', basis: 'scaled', view: 'V1', measure: 'distance', marks: ['M1', 'M9'] }
  await edited(folder, 'A. Rivet', [
    { do: 'add-mark', item: mark },
    { do: 'add-evidence', dimension: 'drum_half', item: evidence },
    { do: 'adopt', dimension: 'drum_half', adopt: 'scaled' },
    { do: 'change-mark', id: 'M9', set: { pixel: [60, 64] } },
    { do: 'rename-dimension', name: 'drum_half', to: 'drum_middle' },
  ])
  await edited(folder, 'B. Brass', [
    { do: 'withdraw-evidence', dimension: 'drum_middle', id: 's2', why: 'creased there' },
    { do: 'adopt', dimension: 'drum_middle', adopt: 'derived' },
    { do: 'undo' },
    { do: 'change-reference', view: 'V1', id: 'R1', set: { size: '12 1/16"' } },
  ])
  return folder
}

async function edited(folder: string, by: string, edits: readonly object[]): Promise<void> {
  const lines = edits.map((edit) => JSON.stringify(edit)).join('\n')
  const { code, stderr } = await scantlingGiven(lines, 'edit', folder, '--by', by)
  expect([code, stderr]).toEqual([0, ''])
}

const MOMENT = /\d{4}-\d\d-\d\d \d\d:\d\d/

/** The lines of an answer without the moments, which are those of this test. */
async function told(folder: string, ...args: string[]): Promise<string[]> {
  const { code, stdout, stderr } = await scantling('history', folder, ...args)
  expect([code, stderr]).toEqual([0, ''])
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => line.replace(MOMENT, '·').trim())
}

describe('The history of a job on the command line', () => {
  it('is told with who did what, and what was there before, the newest first', async () => {
    const folder = await workedOn()
    const before = await folderSnapshot(folder)
    expect(await told(folder)).toEqual([
      '10  ·  B. Brass  changed known size R1 of view "Elevation": size as printed 12" → 12 1/16"',
      '9  ·  B. Brass  took back 8: adopted scaled for drum_middle (before: derived, by B. Brass)',
      '8  ·  B. Brass  adopted derived for drum_middle (before: scaled, by A. Rivet)',
      '7  ·  B. Brass  withdrew evidence s2 of drum_middle: creased there',
      '6  ·  B. Brass  added the person B. Brass',
      '5  ·  A. Rivet  renamed drum_half to drum_middle',
      '4  ·  A. Rivet  moved mark M9 by 4.0 px',
      '3  ·  A. Rivet  adopted scaled for drum_half (before: by the rules, which come to evidence d1 first)',
      '2  ·  A. Rivet  added evidence s2 of drum_half: distance of mark M1, mark M9 in view "Elevation"',
      '1  ·  A. Rivet  picked mark M9',
      '0  ·  A. Rivet  the history begins, with 2 dimensions and 4 marks',
    ])
    expect(await folderSnapshot(folder)).toEqual(before)
  })

  it.each([['drum_middle'], ['drum_half']])(
    'of a dimension is told by its name of now or then: %s',
    async (name) => {
      const numbers = (await told(await workedOn(), '--of', name)).map((line) => line.split(' ')[0])
      expect(numbers).toEqual(['9', '8', '7', '5', '4', '3', '2', '1'])
    },
  )

  it('of a view, a mark and a person is told by what people call them', async () => {
    const folder = await workedOn()
    const numbers = async (of: string): Promise<string[]> =>
      (await told(folder, '--of', of)).map((line) => line.split(' ')[0] ?? '')
    expect(await numbers('elevation')).toEqual(['10'])
    expect(await numbers('Mark M9')).toEqual(['4', '1'])
    expect(await numbers('b. brass')).toEqual(['10', '9', '8', '7', '6'])
    expect(await told(folder, '--of', 'S1')).toEqual(['Nothing is known of what was done to it.'])
  })

  it('is for programs an object a line, with what each field held', async () => {
    const folder = await workedOn()
    const { stdout } = await scantling('history', folder, '--format', 'json')
    const lines = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(lines.map(({ n }) => n)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0])
    expect(lines[1]).toEqual({
      n: 9,
      at: expect.stringMatching(/^\d{4}-.*Z$/),
      by: expect.any(String),
      who: 'B. Brass',
      name: 'undo adopt derived for drum_middle',
      undoes: { n: 8, name: 'adopt derived for drum_middle' },
      changes: [
        {
          thing: { kind: 'dimension', id: 'drum_middle' },
          called: 'drum_middle',
          did: 'adopted',
          fields: [
            { field: 'adopt', before: 'derived', after: 'scaled' },
            { field: 'adoptedBy', before: lines[1].by, after: 'AR' },
            { field: 'adoptedAt', before: lines[2].at, after: lines[7].at },
          ],
          words: 'took back 8: adopted scaled for drum_middle (before: derived, by B. Brass)',
        },
      ],
    })
    expect(lines.at(-1)).toMatchObject({ began: { dimensions: 2, marks: 4, views: 1, sheets: 1 } })
  })

  it('is told while somebody has the job open, up to the last edit', async () => {
    const folder = await workedOn()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit({ do: 'describe', set: { title: 'Drum' } }, 'A. Rivet')
    expect((await told(folder))[0]).toBe(
      '11  ·  A. Rivet  changed the job: what it is called “Drum of the chain ferry” → “Drum”',
    )
    await session.close()
  })

  it('of a folder of the form before is that of its journal', async () => {
    const at = '2026-03-09T10:05:00.000Z'
    const edit = { do: 'change-view', id: 'V1', set: { name: 'Front' } }
    const { folder } = await jobOfTheFormBefore(`${JSON.stringify({ n: 1, at, by: 'AR', edit })}\n`)
    expect(await told(folder)).toEqual([
      '1  ·  A. Rivet  changed view "Front": name “Elevation” → “Front”',
      '0  undated           somebody  the history begins, with 2 dimensions and 4 marks',
    ])
  })

  it('ends when nobody reads on', async () => {
    const folder = await workedOn()
    const gone = new Writable({
      write: (_chunk, _encoding, done) => done(new Error('nobody reads')),
    }).on('error', () => undefined)
    const output = new Output({ stdin: Readable.from([]), stdout: gone, stderr: new PassThrough() }, false)
    expect(await output.stream('one line\n')).toBe(false)
    await expect(tellHistory(output, folder, { of: undefined, json: true })).resolves.toBeUndefined()
  })

  it('is refused in words for what is no job, and of what nobody knows', async () => {
    const folder = await workedOn()
    expect(await scantling('history', folder, '--of', 'collar')).toMatchObject({
      code: 2,
      stdout: '',
      stderr: `Nothing in the job ${folder} is or was called "collar": give the name of a dimension, or the label or id of a view, mark, sheet or person.\n`,
    })
    const refused = await scantling('history', folder, '--of', 'collar', '--format', 'json')
    expect(JSON.parse(refused.stdout).error).toMatchObject({ code: 'cli.history-of-nothing' })
    await edited(folder, 'A. Rivet', [
      { do: 'add-person', item: { id: 'C1', name: 'Cass' } },
      { do: 'add-person', item: { id: 'C2', name: 'Cass' } },
    ])
    expect((await scantling('history', folder, '--of', 'cass')).stderr).toBe(
      'Several things are called "cass" (person C1, person C2): give the id of the one that is meant.\n',
    )
    expect((await scantling('history', join(folder, 'scans'))).code).toBe(2)
  })
})
