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
      '10  ·  B. Brass  changed figured size R1 of view “Elevation”: size as printed 12" → 12 1/16"',
      '9  ·  B. Brass  took back 8: adopted scaled for drum_middle (before: derived, by B. Brass)',
      '8  ·  B. Brass  adopted derived for drum_middle (before: scaled, by A. Rivet)',
      '7  ·  B. Brass  withdrew evidence s2 of drum_middle: creased there',
      '6  ·  B. Brass  added the person B. Brass',
      '5  ·  A. Rivet  renamed drum_half to drum_middle',
      '4  ·  A. Rivet  moved mark M9 by 4.0 px, from 60.0, 60.0 to 60.0, 64.0 px',
      '3  ·  A. Rivet  adopted scaled for drum_half (before: left to the rules, which take evidence d1 first)',
      '2  ·  A. Rivet  added evidence s2 of drum_half: distance between mark M1, mark M9 in view “Elevation”',
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
      '11  ·  A. Rivet  changed the job: title “Drum of the chain ferry” → “Drum”',
    )
    await session.close()
  })

  it('of a folder of the form before is that of its journal', async () => {
    const at = '2026-03-09T10:05:00.000Z'
    const edit = { do: 'change-view', id: 'V1', set: { name: 'Front' } }
    const { folder } = await jobOfTheFormBefore(`${JSON.stringify({ n: 1, at, by: 'AR', edit })}\n`)
    expect(await told(folder)).toEqual([
      '1  ·  A. Rivet  changed view “Front”: name “Elevation” → “Front”',
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

describe('What is called by labels on the command line', () => {
  /** A job in which things were added without ids, so that they have labels, and what the answers called them. */
  async function labelled(): Promise<{ folder: string; answers: string[] }> {
    const { folder } = await workshopJob()
    const found = { basis: 'found', readings: ['6 1/16"'] }
    const mark = {
      sheet: 'Drum',
      how: 'hand',
      sigma: 1,
      kind: 'point',
      pixel: [60, 60],
      label: 'throat, right',
    }
    const answers: string[] = []
    for (const edit of [
      { do: 'add-evidence', dimension: 'drum_length', item: found },
      { do: 'add-evidence', dimension: 'Drum, half its length', item: found },
      { do: 'adopt', dimension: 'drum_length', adopt: 'found 1' },
      { do: 'withdraw-evidence', dimension: 'drum_half', id: 'Found 1', why: 'of another part' },
      { do: 'add-mark', item: mark },
      { do: 'change-mark', id: 'throat, right', set: { pixel: [60, 63] } },
      { do: 'repeat-pick', mark: 'point 5', pixel: [60, 64] },
      {
        do: 'add-reference',
        view: 'elevation',
        item: { kind: 'distance', marks: ['throat, right', 'M1'], size: '1"' },
      },
      { do: 'change-reference', view: 'Elevation', id: 'figured size 3', set: { size: '1 1/8"' } },
      { do: 'add-note', item: { sheet: 'S1', outline: [], text: 'Worn on the left', about: 'point 5' } },
    ]) {
      const { code, stdout, stderr } = await scantlingGiven(
        JSON.stringify(edit),
        'edit',
        folder,
        '--by',
        'AR',
      )
      expect([code, stderr]).toEqual([0, ''])
      answers.push(
        stdout
          .trim()
          .replace(/^ok \d+: /, '')
          .replace(/ \([^)]*\)$/, ''),
      )
    }
    return { folder, answers }
  }

  it('is taken for its id by an edit, and the history calls the edit as its answer and undo do', async () => {
    const { folder, answers } = await labelled()
    expect(answers).toEqual([
      'add measured 1 to drum_length',
      'add measured 1 to drum_half',
      'adopt measured 1 for drum_length',
      'withdraw measured 1 of drum_half',
      'add point 5',
      'move point 5',
      'pick point 5 again',
      'add figured size 3 to view “Elevation”',
      'change figured size 3 of view “Elevation”: size as printed',
      'add note 1, “Worn on the left”',
    ])
    const { stdout } = await scantling('history', folder, '--format', 'json')
    const names = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).name)
    expect(names.slice(0, -1)).toEqual(answers.toReversed())
    const lines = await told(folder)
    expect(lines[3]).toMatch(
      /picked point 5 \(throat, right\) again at 60\.0, 64\.0 px, 1\.0 px from the pick before$/,
    )
    expect(lines[7]).toMatch(
      /adopted measured 1 for drum_length: 6 1\/16" \(before: left to the rules, which take evidence p1 \(6"\) first\)$/,
    )
  })

  it('is told by what it marks, what it is, and as a part of what it belongs to', async () => {
    const { folder } = await labelled()
    const numbers = async (of: string): Promise<string[]> =>
      (await told(folder, '--of', of)).map((line) => line.split(' ')[0] ?? '')
    expect(await numbers('throat, right')).toEqual(['7', '6', '5'])
    expect(await numbers('Drum, length')).toEqual(['3', '1'])
    expect(await numbers('drum_length measured 1')).toEqual(['3', '1'])
    // What these were called before is understood as well.
    expect(await numbers('drum_length found 1')).toEqual(['3', '1'])
    expect(await numbers('Elevation known size 3')).toEqual(['9', '8'])
    expect(await numbers('measured 1 of drum_half')).toEqual(['4', '2'])
    expect(await numbers('figured size 3')).toEqual(['9', '8'])
    expect(await numbers('note 1')).toEqual(['10'])
    expect((await scantling('history', folder, '--of', 'measured 1')).stderr).toBe(
      'Several things are called "measured 1": give one of "drum_length measured 1", "drum_half measured 1".\n',
    )
  })

  it('is refused by an edit where several things are called so, and they are listed', async () => {
    const { folder } = await labelled()
    await edited(folder, 'A. Rivet', [{ do: 'change-mark', id: 'M1', set: { label: 'Throat, right' } }])
    const again = JSON.stringify({ do: 'change-mark', id: 'throat, right', set: { sigma: 2 } })
    const { code, stderr } = await scantlingGiven(again, 'edit', folder, '--by', 'AR')
    expect(code).toBe(2)
    expect(stderr).toMatch(
      /^Standard input, line 1: Several things are called "throat, right" \(M1, point 5: m-\w{13}\): give the id of the one that is meant\.\n$/,
    )
  })
})

describe('The lines of a history', () => {
  it('stand in the same columns, however long the name of somebody is', async () => {
    const { folder } = await workshopJob()
    const long = 'Wilhelmina Featherstonehaugh-Cholmondeley'
    await edited(folder, long, [{ do: 'describe', set: { title: 'One' } }])
    await edited(folder, 'A. Rivet', [{ do: 'describe', set: { title: 'Two' } }])
    const { stdout } = await scantling('history', folder)
    const lines = stdout.trimEnd().split('\n')
    const starts = lines.map((line) => line.search(/(?<= {2})(changed|added|the history)/))
    expect(lines.join('\n')).toContain('  Wilhelmina Featherstone…  changed')
    expect(new Set(starts).size).toBe(1)
  })

  it('do not say of a folder of the form before that somebody began it who only opened it', async () => {
    const at = '2026-03-09T10:05:00.000Z'
    const edit = { do: 'change-view', id: 'V1', set: { name: 'Front' } }
    const { folder } = await jobOfTheFormBefore(`${JSON.stringify({ n: 1, at, by: 'AR', edit })}\n`)
    await edited(folder, 'B. Brass', [{ do: 'describe', set: { title: 'Drum' } }])
    expect((await told(folder)).at(-1)).toMatch(
      /^0 {2}undated {11}somebody {2}the history begins, with 2 dimensions and 4 marks; carried over from the earlier form on ·$/,
    )
    const { stdout } = await scantling('history', folder, '--format', 'json')
    const began = JSON.parse(stdout.trimEnd().split('\n').at(-1) ?? '')
    expect(began).toEqual({
      n: 0,
      began: { dimensions: 2, marks: 4, views: 1, sheets: 1 },
      anew: false,
      carried: expect.stringMatching(/^\d{4}-.*Z$/),
    })
  })

  it('are gone back in by somebody else once they say that they mean it, and the refusal says how', async () => {
    const { folder } = await workshopJob()
    await edited(folder, 'A. Rivet', [{ do: 'describe', set: { title: 'One' } }])
    const refused = await scantlingGiven('{"do":"undo"}', 'edit', folder, '--by', 'B. Brass')
    expect([refused.code, refused.stderr]).toEqual([2, expect.stringContaining('with "theirs": true')])
    await edited(folder, 'B. Brass', [{ do: 'undo', theirs: true }])
  })
})
