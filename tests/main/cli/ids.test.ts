import { cp } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { labelOf } from '../../../src/core/job/ids/label.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { readJobFolder } from '../../../src/main/services/job-folder/read-job-folder.ts'
import { scantling, scantlingGiven } from '../fixtures/command-line.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../fixtures/workshop-job.ts'

const MINTED = /\b[a-z]-[0-9a-z]{13}\b/
const pixel = (x: number, y: number) => ({ how: 'hand', sigma: 1, kind: 'point', pixel: [x, y] })

const edit = (folder: string, ...edits: object[]) =>
  scantlingGiven(edits.map((one) => JSON.stringify(one)).join('\n'), 'edit', folder, '--by', 'A. Rivet')

const jobIn = async (folder: string): Promise<Job> => (await readJobFolder(folder)).job

describe('an edit without an id', () => {
  it('gets one, which the answer says beside the label', async () => {
    const { folder } = await workshopJob()
    const { stdout, code } = await edit(
      folder,
      { do: 'add-mark', item: { sheet: 'S1', ...pixel(10, 20) } },
      { do: 'add-note', item: { id: 'mine', sheet: 'S1', outline: [], text: 'With an id of its own.' } },
      { do: 'add-evidence', dimension: 'drum_length', item: { basis: 'found', readings: ['6 in'] } },
    )
    const { marks, notes, dimensions } = await jobIn(folder)
    const [mark, evidence] = [marks.at(-1), dimensions[0]?.evidence.at(-1)]
    expect(code).toBe(0)
    expect(stdout).toBe(
      [
        `ok 1: add point 5 (mark ${mark?.id})\n`,
        'ok 2: add note mine, “With an id of its own.”\n',
        `ok 3: add measured 1 to drum_length (found ${evidence?.id})\n`,
      ].join(''),
    )
    expect(mark?.id).toMatch(MINTED)
    expect(mark).toMatchObject({ number: 5, by: 'AR' })
    expect(notes.map(({ id }) => id)).toEqual(['mine'])
  })

  it('is referred to in the same edit by what stands in its place', async () => {
    const { folder } = await workshopJob()
    const { stdout } = await edit(folder, {
      do: 'several',
      name: 'size of the drum, once more',
      edits: [
        { do: 'add-mark', item: { id: 'new:left', sheet: 'S1', ...pixel(50, 150) } },
        { do: 'add-mark', item: { id: 'new:right', sheet: 'S1', ...pixel(350, 150) } },
        {
          do: 'add-reference',
          view: 'V1',
          item: { kind: 'distance', marks: ['new:left', 'new:right'], size: '12"' },
        },
      ],
    })
    const { marks, views } = await jobIn(folder)
    const [left, right] = marks.slice(-2).map(({ id }) => id)
    const reference = views[0]?.references.at(-1)
    expect(reference?.marks).toEqual([left, right])
    expect(stdout).toBe(
      `ok 1: size of the drum, once more (new:left ${left}, new:right ${right}, reference ${reference?.id})\n`,
    )
  })

  it.each([
    [
      { do: 'add-mark', item: { id: 'new:a', sheet: 'new:b', ...pixel(1, 2) } },
      'Standard input, line 1: point 5: sheet is "new:b", and the job has no such sheet.\n',
    ],
    [
      {
        do: 'several',
        name: 'two',
        edits: [1, 2].map((x) => ({
          do: 'add-mark',
          item: { id: 'new:a', sheet: 'S1', ...pixel(x, x) },
        })),
      },
      'Standard input, line 1: The edit: "new:a" stands for two new things: give each its own.\n',
    ],
    [
      { do: 'add-mark', item: 3 },
      'Standard input, line 1: The edit: the new mark must be an object with named fields.\n',
    ],
  ])('is refused where it makes no sense: %j', async (one, sentence) => {
    const { folder } = await workshopJob()
    const { code, stderr } = await edit(folder, one)
    expect({ code, stderr }).toEqual({ code: 2, stderr: sentence })
    expect((await jobIn(folder)).marks).toHaveLength(4)
  })
})

/** A job in which everything was added without an id, and much is to be said of it. */
async function jobOfNewThings(): Promise<string> {
  const parent = await temporaryFolder()
  const folder = join(parent, 'job')
  await scantling('new', folder, await drawScan(join(parent, 'drum.png')))
  const point = (id: string, x: number, y: number) => ({
    do: 'add-mark',
    item: { id: `new:${id}`, sheet: 'S1', ...pixel(x, y) },
  })
  const distance = (marks: string[], size: string) => ({
    kind: 'distance',
    marks: marks.map((one) => `new:${one}`),
    size,
  })
  const scaled = (marks: string[], measure = 'distance') => ({
    basis: 'scaled',
    view: 'new:view',
    measure,
    marks: marks.map((one) => `new:${one}`),
  })
  const line = { sheet: 'S1', how: 'hand', sigma: 1, kind: 'line' }
  const made = await edit(folder, {
    do: 'several',
    name: 'all at once',
    edits: [
      point('a', 50, 50),
      point('b', 350, 50),
      point('c', 50, 250),
      point('d', 200, 50),
      point('off', 5000, 50),
      {
        do: 'add-mark',
        item: {
          ...line,
          id: 'new:l',
          pixels: [
            [10, 10],
            [200, 12],
            [300, 40],
          ],
        },
      },
      {
        do: 'add-mark',
        item: {
          ...line,
          id: 'new:m',
          pixels: [
            [10, 90],
            [300, 40],
          ],
        },
      },
      {
        do: 'add-view',
        item: {
          id: 'new:view',
          sheet: 'S1',
          name: 'Elevation',
          mapping: 'uniform',
          references: [distance(['a', 'b'], '12"'), distance(['a', 'c'], '8"'), distance(['a', 'd'], '9"')],
        },
      },
      {
        do: 'add-view',
        item: { id: 'new:bare', sheet: 'S1', name: 'Plan', mapping: 'uniform', references: [] },
      },
      { do: 'add-instrument', item: { id: 'new:rule', name: '6 in rule', resolution: '1/64"' } },
      {
        do: 'add-dimension',
        item: {
          name: 'drum',
          label: 'Drum',
          kind: 'length',
          evidence: [
            { basis: 'printed', text: '6"', legibility: 'doubtful' },
            { basis: 'printed', text: '?', sheet: 'S1' },
            scaled(['a', 'off']),
            scaled(['l', 'm'], 'spacing'),
            { ...scaled(['a', 'd']), view: 'new:bare' },
            { basis: 'found', readings: ['5 in', '7 in'], instrument: 'new:rule' },
          ],
        },
      },
      { do: 'add-relation', item: { text: 'drum = 7 in' } },
      { do: 'add-note', item: { sheet: 'S1', outline: [], text: 'Worn.', about: 'new:l' } },
    ],
  })
  expect(made).toMatchObject({ code: 0, stderr: '' })
  return folder
}

describe('nobody is told a minted id', () => {
  it('by a table, in whatever form a person reads, nor by what is to be settled, nor by a list of notes', async () => {
    const folder = await jobOfNewThings()
    const said = await Promise.all([
      scantling('table', folder),
      scantling('table', folder, '--format', 'md'),
      scantling('table', folder, '--format', 'csv'),
      scantling('table', folder, '--simulate', 'drum'),
      scantling('check', folder),
      scantling('notes', folder),
      scantling('history', folder),
      scantling('history', folder, '--of', 'drum'),
      scantling('history', folder, '--of', 'line 6'),
    ])
    const text = said.map(({ stdout, stderr }) => stdout + stderr).join('\n')
    expect(text.match(MINTED)).toBeNull()
    for (const label of [
      'Elevation (view 1)',
      'Figured size 9" does not fit',
      'Point 5 lies off its page',
      'measured 1',
      'drum, printed 2',
      'relation 1',
      'note 1  Worn.',
      'picked line 6',
      'added scaled 2 of drum: spacing between line 6, line 7 in view “Elevation”',
      'added figured size 3 of view “Elevation”: 9"',
      'added note 1: “Worn.”, about line 6, on sheet “drum”',
    ]) {
      expect(text).toContain(label)
    }
  })

  it('by the sentences and sources of a table for programs, which say the labels beside the ids', async () => {
    const folder = await jobOfNewThings()
    const table = JSON.parse((await scantling('table', folder, '--format', 'json')).stdout)
    const [row] = table.rows
    const sentences = JSON.stringify([
      table.cautions,
      row.why,
      row.evidence.map(({ problem }: { problem?: string }) => problem),
      row.budget,
      table.views.map(({ problem }: { problem?: string }) => problem),
      table.relations.map(({ problem }: { problem?: string }) => problem),
    ])
    expect(sentences.match(MINTED)).toBeNull()
    expect(sentences).toContain('Line 6 and line 7 are')
    expect(sentences).toContain('of point 1')
    const job = await jobIn(folder)
    expect(row.evidence.map(({ label }: { label: string }) => label)).toEqual(
      job.dimensions[0]?.evidence.map(labelOf),
    )
    expect(table.views.map(({ label }: { label: string }) => label)).toEqual(['view 1', 'view 2'])
    expect(table.views[0].references.map(({ label }: { label: string }) => label)).toEqual([
      'figured size 1',
      'figured size 2',
      'figured size 3',
    ])
    expect(table.relations[0].label).toBe('relation 1')
  })

  it('by what is refused, and a sheet is named by its number', async () => {
    const folder = await jobOfNewThings()
    const job = await jobIn(folder)
    const [view] = job.views
    const said = await Promise.all(
      [
        { do: 'remove-mark', id: job.marks[0]?.id },
        { do: 'change-mark', id: job.marks[0]?.id, set: { sigma: -1 } },
        { do: 'repeat-pick', mark: job.marks[5]?.id, pixel: [1, 2] },
        {
          do: 'add-reference',
          view: view?.id,
          item: { kind: 'diameter', marks: [job.marks[0]?.id], size: '1"' },
        },
        { do: 'remove-note', id: job.marks[0]?.id },
        { do: 'change-view', id: view?.id, set: { outline: [[1, 1]] } },
        { do: 'remove-dimension', name: 'drum' },
        { do: 'change-mark', id: job.marks[0]?.id, set: { by: 'm-2222222222222' } },
      ].map(async (one) => {
        const copy = join(await temporaryFolder(), 'copy')
        await cp(folder, copy, { recursive: true })
        const { code, stderr } = await edit(copy, one)
        expect(code).toBe(2)
        return stderr
      }),
    )
    expect(said.join('').match(MINTED)).toBeNull()
    expect(said[0]).toContain(
      'Point 1 is used by figured size 1 of view "Elevation": remove or change that first.',
    )

    const another = { title: 'Another', record: {}, scan: job.sheets[0]?.scan }
    expect((await edit(folder, { do: 'add-sheet', item: another })).stdout).toMatch(
      /^ok 3: add sheet “Another” \(/,
    )
    expect(await scantling('accept-scan', folder, 'sheet 2')).toMatchObject({
      code: 0,
      stdout: 'Sheet 2 has drum.png as it is: nothing to do.\n',
    })
    expect((await scantling('accept-scan', folder, '9')).stderr).toContain('its sheets are: S1, sheet 2')
  })
})
