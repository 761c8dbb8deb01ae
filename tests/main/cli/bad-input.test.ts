import { readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Dimension, Job, View } from '../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { writeJob } from '../../../src/core/job/write-job.ts'
import { scantling, scantlingGiven, scantlingProcess } from '../fixtures/command-line.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import type { Finished } from '../fixtures/run-program.ts'
import { drawScan, drumJob, workshopJob } from '../fixtures/workshop-job.ts'

/** One line, one full stop, and it names the thing. */
function expectOneSentence(stderr: string, names: readonly string[]): void {
  expect(stderr).toMatch(/^[^\n]+[.!?]\n$/)
  expect(stderr).not.toMatch(/[.!?] [A-Z]/)
  expect(stderr).not.toMatch(/\bat .*:\d+:\d+|undefined|\[object/)
  for (const name of names) expect(stderr).toContain(name)
}

/** What is printed as JSON is what went wrong and nothing else: the sentence, and what it is made from. */
function expectTheSameAsJson({ stdout, stderr }: Finished): void {
  const { error, ...else_ } = JSON.parse(stdout)
  expect(else_).toEqual({})
  expect(error).toEqual({ code: expect.any(String), parts: expect.any(Object), words: stderr.trimEnd() })
}

const derived = (name: string, formula: string): Dimension => ({
  name,
  label: name,
  kind: 'length',
  evidence: [{ id: 'E1', basis: 'derived', formula }],
})

const withView = (job: Job, change: (view: View) => unknown): unknown => ({
  ...job,
  views: job.views.map(change),
})

/** Written past every check, by a program that keeps no history. */
const document =
  (change: (job: Job) => unknown) =>
  async (folder: string, job: Job): Promise<void> => {
    await rm(join(folder, 'history.ndjson'))
    await writeFile(join(folder, 'job.json'), JSON.stringify(change(job), null, 2))
  }

const journal =
  (text: string) =>
  async (folder: string, job: Job): Promise<void> => {
    await document((same) => same)(folder, job)
    await writeFile(join(folder, 'journal.ndjson'), text)
  }

type Spoil = (folder: string, job: Job) => Promise<unknown>

const CASES: [what: string, names: string[], spoil: Spoil][] = [
  ['a folder that is not there', ['job', 'does not exist'], (folder) => rm(folder, { recursive: true })],
  [
    'a file in place of a folder',
    ['is a file, not a job folder'],
    async (folder) => {
      await rm(folder, { recursive: true })
      await writeFile(folder, 'x')
    },
  ],
  ['a folder without job.json', ['holds no job.json'], (folder) => rm(join(folder, 'job.json'))],
  ['an empty job.json', ['job.json', 'empty'], (folder) => writeFile(join(folder, 'job.json'), '')],
  [
    'a job.json that is not JSON',
    ['job.json', 'line 2'],
    (folder) => writeFile(join(folder, 'job.json'), '{\n'),
  ],
  ['a job.json that is JSON but no job', ['job.json', 'scantling-job'], document(() => ['not', 'a', 'job'])],
  [
    'a job.json that is a link',
    ['job.json', 'plain file'],
    async (folder, job) => {
      await rm(join(folder, 'job.json'))
      await writeFile(join(folder, 'elsewhere.json'), writeJob(job))
      await symlink('elsewhere.json', join(folder, 'job.json'))
    },
  ],
  ['a job of a newer version', ['version 3', 'newer'], document((job) => ({ ...job, version: 3 }))],
  [
    'a scan that is missing',
    ['drum.png', 'S1', 'does not exist'],
    (folder) => rm(join(folder, 'scans/drum.png')),
  ],
  [
    'a scan that is another picture',
    ['drum.png', 'S1', 'SHA-256'],
    (folder) => drawScan(join(folder, 'scans/drum.png'), 90),
  ],
  [
    'a scan that leads out of the job',
    ['file of the scan'],
    document((job) => ({
      ...job,
      sheets: job.sheets.map((sheet) => ({ ...sheet, scan: { ...sheet.scan, file: '../../drum.png' } })),
    })),
  ],
  [
    'a scan that is a link out of the job',
    ['drum.png', 'out of'],
    async (folder) => {
      await rm(join(folder, 'scans/drum.png'))
      await symlink('../../drum.png', join(folder, 'scans/drum.png'))
    },
  ],
  [
    'a mark that does not exist',
    ['M9'],
    document((job) =>
      withView(job, (view) => ({
        ...view,
        references: [{ id: 'R1', kind: 'distance', marks: ['M1', 'M9'], size: '12"' }],
      })),
    ),
  ],
  [
    'two dimensions of one name',
    ['drum_half'],
    document((job) => ({
      ...job,
      dimensions: [...job.dimensions, derived('drum_half', 'drum_length / 2')],
    })),
  ],
  [
    'a circular formula',
    ['drum_third'],
    document((job) => ({
      ...job,
      dimensions: [
        ...job.dimensions,
        derived('drum_third', 'drum_fourth'),
        derived('drum_fourth', 'drum_third / 2'),
      ],
    })),
  ],
  [
    'a formula that mixes a length and an area',
    ['drum_odd'],
    document((job) => ({
      ...job,
      dimensions: [...job.dimensions, derived('drum_odd', 'drum_length + drum_length * drum_half')],
    })),
  ],
  [
    'a formula over a dimension that does not exist',
    ['rim'],
    document((job) => ({
      ...job,
      dimensions: [...job.dimensions, derived('drum_odd', 'rim + 1 in')],
    })),
  ],
  [
    'a reference of no size',
    ['R1', 'V1'],
    document((job) =>
      withView(job, (view) => ({
        ...view,
        references: [{ id: 'R1', kind: 'distance', marks: ['M1', 'M2'], size: '1 38' }],
      })),
    ),
  ],
  ['a job without dimensions', ['has no dimensions'], document((job) => ({ ...job, dimensions: [] }))],
  ['a journal with a bad line in the middle', ['journal.ndjson, line 1'], journal('x\n{}\n')],
  [
    'a journal with a gap',
    ['journal.ndjson, line 1', 'edits are missing'],
    journal('{"n":7,"at":"","by":"AR","edit":{"do":"describe"}}\n'),
  ],
]

test.each(CASES)(
  '%s: table and check say so in one sentence, exit 2, and nothing changes',
  async (_, names, spoil) => {
    const { folder, job } = await workshopJob()
    await spoil(folder, job)
    const parent = join(folder, '..')
    const before = await folderSnapshot(parent)
    const [table, check] = await Promise.all([
      scantling('table', '--format', 'json', folder),
      scantling('check', folder),
    ])
    expectOneSentence(table.stderr, names)
    // What check lists on standard output it does not say again on standard error.
    expectOneSentence(check.stderr, check.stdout === '' ? names : names.slice(0, 1))
    for (const name of names) expect(check.stdout + check.stderr).toContain(name)
    for (const line of check.stdout.split('\n').filter((text) => text.trim() !== ''))
      expect(check.stderr).not.toContain(line.trim())
    expect([table.code, check.code]).toEqual([2, 2])
    expectTheSameAsJson(table)
    expect(await folderSnapshot(parent)).toEqual(before)
  },
)

describe('a view that has too few references for its mapping', () => {
  const spoil = document((job) => withView(job, (view) => ({ ...view, mapping: 'projective' })))

  test('leaves its dimensions open: the table is printed, the sentence names the view, exit 2', async () => {
    const { folder, job } = await workshopJob()
    await spoil(folder, job)
    const before = await folderSnapshot(folder)
    const text = await scantling('table', folder)
    expect(text.code).toBe(2)
    expect(text.stdout).toContain('drum_length')
    expectOneSentence(text.stderr, ['V1', 'Elevation'])
    const json = await scantling('table', folder, '--format', 'json')
    expect(json.code).toBe(2)
    expect(JSON.parse(json.stdout).views[0].parameters).toEqual({})
    expectOneSentence(json.stderr, ['V1'])
    const check = await scantling('check', folder)
    expect(check.code).toBe(2)
    expect(check.stdout).toContain('V1 Elevation')
    expectOneSentence(check.stderr, ['V1'])
    expect(await folderSnapshot(folder)).toEqual(before)
  })
})

describe('an edit that is refused', () => {
  test.each([
    ['{"do":"add-mark"', ['line 1', 'JSON']],
    ['[1]', ['line 1', 'edit']],
    ['{"do":"polish"}', ['line 1', 'unknown edit "polish"']],
    [
      '{"do":"remove-mark","id":"M1"}',
      ['line 1', 'Mark "M1" is used by figured size "R1" of view "Elevation"'],
    ],
    ['{"do":"undo"}', ['line 1', 'nothing to undo']],
    ['{"do":"adpot","dimension":"drum_length"}', ['line 1', 'did you mean "adopt"?']],
    ['{"do":"describe","set":{"titel":"x"}}', ['line 1', 'did you mean "title"?']],
    ['{"do":"remove-mark","id":"M77"}', ['line 1', 'M77']],
    ['{"do":"adopt","dimension":"rim","adopt":"printed"}', ['line 1', 'rim']],
    [
      '{"do":"remove-evidence","dimension":"drum_length","id":"E2","undo":true}',
      ['line 1', 'withdraw-evidence'],
    ],
  ])('%s: one sentence, exit 2, nothing changes', async (line, names) => {
    const { folder } = await workshopJob()
    const before = await folderSnapshot(folder)
    const { code, stdout, stderr } = await scantlingGiven(`${line}\n`, 'edit', folder)
    expectOneSentence(stderr, ['Standard input', ...names])
    expect(code).toBe(2)
    expect(stdout).toBe('')
    expect(await folderSnapshot(folder)).toEqual(before)
  })

  test.each([
    ['', 'does not exist'],
    ['scans', 'is a folder'],
  ])('edits from "%s"', async (name, what) => {
    const { folder } = await workshopJob()
    const before = await folderSnapshot(folder)
    const { code, stderr } = await scantling('edit', folder, join(folder, name === '' ? 'edits' : name))
    expectOneSentence(stderr, [what])
    expect(code).toBe(2)
    expect(await folderSnapshot(folder)).toEqual(before)
  })
})

describe('a new job', () => {
  test('is not made in a folder that is in use, and what is there stays', async () => {
    const { folder, scan } = await workshopJob()
    const before = await folderSnapshot(folder)
    const { code, stderr } = await scantling('new', folder, scan)
    expectOneSentence(stderr, [folder, 'is not empty'])
    expect(code).toBe(2)
    expect(await folderSnapshot(folder)).toEqual(before)
  })

  test('is not made from a scan that is cut short', async () => {
    const { folder, scan } = await workshopJob()
    const parent = join(folder, '..')
    const bad = join(parent, 'bad.png')
    const whole = await readFile(scan)
    await writeFile(bad, whole.subarray(0, whole.length - 40))
    const before = await folderSnapshot(parent)
    const { code, stderr } = await scantling('new', join(parent, 'deep', 'new'), scan, bad)
    expectOneSentence(stderr, [bad, 'truncated or damaged'])
    expect(code).toBe(2)
    expect(await folderSnapshot(parent)).toEqual(before)
  })

  test.each([
    ['is not there', undefined, 'does not exist'],
    ['is empty', '', 'is empty'],
    ['is no picture', 'just text', 'not a picture'],
    [
      "is a drawing program's file",
      '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>',
      'not a picture that can be read',
    ],
  ])('is not made from a scan that %s', async (_, content, what) => {
    const { folder, scan } = await workshopJob()
    const parent = join(folder, '..')
    const bad = join(parent, 'bad.png')
    if (content !== undefined) await writeFile(bad, content)
    const before = await folderSnapshot(parent)
    const { code, stderr } = await scantling('new', join(parent, 'deep', 'new'), scan, bad)
    expectOneSentence(stderr, [bad, what])
    expect(code).toBe(2)
    expect(await folderSnapshot(parent)).toEqual(before)
  })
})

describe('a command line that is wrong', () => {
  test.each([
    [
      ['tabel', 'x'],
      ['tabel', 'did you mean table?'],
    ],
    [['table'], ['FOLDER']],
    [['table', 'x', 'y'], ['table']],
    [
      ['table', 'x', '--format', 'xlsx'],
      ['xlsx', 'text, json, csv, md'],
    ],
    [['table', 'x', '--frmat', 'csv'], ['--frmat']],
    [['new', 'x'], ['SCAN']],
    [
      ['new', 'x', 'y', '--unit', 'cubit'],
      ['cubit', 'in, mm'],
    ],
    [
      ['schema', 'drawing'],
      ['"drawing" is no subject; allowed choices are job, table, edit; "scantling schema --help"'],
    ],
    [
      ['edit', 'x', '--by', ''],
      ['--by is empty', 'give a name', '"scantling edit --help"'],
    ],
    [['new', 'x', 'y', '--title', ' '], ['--title is empty']],
    [
      ['accept-scan', 'x'],
      ['SHEET', '"scantling accept-scan --help"'],
    ],
  ])('%j: one sentence, exit 2', async (args, names) => {
    const { code, stdout, stderr } = await scantling(...args)
    expectOneSentence(stderr.replace('(Did', '(did'), names)
    expect(code).toBe(2)
    expect(stdout).toBe('')
  })
})

describe('what is given to a command', () => {
  const SAMPLE = 'samples/deck-ventilator'
  test.each<[args: string[], sentence: string]>([
    [['--nothing'], `Unknown option '--nothing'; "scantling --help" shows how it is used.`],
    [
      ['table', 'x', '--format'],
      `Option '--format <FORMAT>' argument missing; "scantling table --help" shows how it is used.`,
    ],
    [
      ['table', 'x', '--seed', '-1'],
      `--seed can't be "-1"; it takes a whole number from 0 to 10000000; "scantling table --help" shows how it is used.`,
    ],
    [
      ['new', 'x', 'y', '--dpi', '0'],
      `--dpi can't be "0"; give pixels per inch; "scantling new --help" shows how it is used.`,
    ],
    [
      ['new', 'x', 'README.md', '--password-file', 'nothere'],
      "The password in nothere can't be read because it does not exist.",
    ],
    [
      ['new', 'x', 'README.md', '--password-file', '/dev/null'],
      '"/dev/null" has no password on its first line: write it there.',
    ],
    [['open', 'x', '--sample'], 'Name a job folder or give --sample, not both.'],
    [
      ['notes', SAMPLE, '--export', 'a', '--import', 'b'],
      '--export and --import are two things: do one after the other; "scantling notes --help" shows how it is used.',
    ],
    [
      ['notes', SAMPLE, '--import', 'nothere'],
      "The notes in nothere can't be read because it does not exist.",
    ],
    [
      ['notes', SAMPLE, '--export', 'no folder/notes.jsonld'],
      "The notes can't be written to no folder/notes.jsonld because it does not exist.",
    ],
  ])('%j: %s', async (args, sentence) => {
    expect(await scantling(...args)).toEqual({ code: 2, stdout: '', stderr: `${sentence}\n` })
  })

  test('of several scans that are not there the first is named, and how many more there are', async () => {
    const { folder, job } = await workshopJob()
    const [sheet] = job.sheets
    if (sheet === undefined) throw new Error('the job has no sheet')
    const another = { ...sheet, id: 'S2', scan: { ...sheet.scan, file: 'other.png' } }
    await document(() => ({ ...job, sheets: [sheet, another] }))(folder, job)
    await rm(join(folder, 'scans/drum.png'))
    expect((await scantling('table', folder)).stderr).toMatch(/^The scan drum\.png of .* \(and 1 more\)\.\n$/)
    expect((await scantling('check', folder)).stderr).toBe(
      "The scan drum.png of sheet S1 can't be read (and 1 more); the list says more.\n",
    )
  })
})

describe('a process of its own', () => {
  test.each<[what: string, args: string[], input: string, names: string[]]>([
    ['a folder that is not there', ['table', 'no such job'], '', ['no such job', 'does not exist']],
    ['a wrong command line', ['tabel'], '', ['tabel', '"scantling --help"']],
    ['an edit on standard input', ['edit', '.'], '[1]\n', ['holds no job.json']],
  ])('says in one sentence what is wrong with %s, and ends with 2', async (_, args, input, names) => {
    const inProcess = await scantlingGiven(input, ...args)
    const { code, stdout, stderr } = await scantlingProcess(args, input)
    expectOneSentence(stderr.replace('(Did', '(did'), names)
    expect([code, stdout]).toEqual([2, ''])
    expect(inProcess).toEqual({ code, stdout, stderr })
  })

  test('refuses an edit that is given on standard input', async () => {
    const { folder } = await workshopJob()
    const before = await folderSnapshot(folder)
    const { code, stdout, stderr } = await scantlingProcess(['edit', folder], '{"do":"polish"}\n')
    expectOneSentence(stderr, ['Standard input, line 1', 'unknown edit "polish"'])
    expect([code, stdout]).toEqual([2, ''])
    expect(await folderSnapshot(folder)).toEqual(before)
  })
})

describe('an error for a program', () => {
  test.each<[args: string[], code: string, parts: object]>([
    [['table', 'no such job'], 'job-folder.not-opened', { folder: 'no such job' }],
    [['table', 'x', '--seed', '-1'], 'usage.no-whole-number', { option: '--seed', value: '-1', least: 0 }],
    [['limits', '--set', 'x'], 'usage.unsuitable-value', { option: '--set', value: 'x', wants: 'limit' }],
    [['table', 'x', '--frmat', 'csv'], 'usage.unknown-option', { option: '--frmat', meant: '--format' }],
  ])('%j has its code and its parts', async (args, code, parts) => {
    const json = await scantling(...args, '--format', 'json')
    expectTheSameAsJson(json)
    expect(JSON.parse(json.stdout).error).toMatchObject({ code, parts })
    expect(await scantling(...args)).toEqual({ ...json, stdout: '' })
  })
})

test('the sound job that these are made from is indeed sound', async () => {
  const { folder, job } = await workshopJob()
  const first = job.sheets[0]
  expect(first && drumJob(first.scan).title).toBe(job.title)
  expect(parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))).toMatchObject(job)
  expect(await scantling('check', folder)).toEqual({
    code: 0,
    stdout: 'Nothing to settle in 2 dimensions.\n',
    stderr: '',
  })
})
