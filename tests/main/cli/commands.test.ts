import { spawn } from 'node:child_process'
import { appendFile, cp, mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { tableJson } from '../../../src/core/handoff/table/table-json.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { tableText } from '../../../src/main/cli/layout/table-text.ts'
import { writeHolder } from '../../../src/main/services/job-folder/lock/lock-holder.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { hashFile } from '../../../src/main/services/scans/kept/hash-file.ts'
import { COMMAND_LINE, scantling, scantlingGiven, scantlingProcess } from '../fixtures/command-line.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { holderElsewhere } from '../fixtures/lock-file.ts'
import { point } from '../fixtures/picked-point.ts'
import { runProgram } from '../fixtures/run-program.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, drumJob, workshopJob } from '../fixtures/workshop-job.ts'

const editing = (folder: string, edits: readonly object[], ...args: string[]) =>
  scantlingGiven(edits.map((edit) => `${JSON.stringify(edit)}\n`).join(''), 'edit', folder, ...args)

describe('from scans to a table on the command line', () => {
  test('new makes a job with one sheet for each scan, byte for byte', async () => {
    const parent = await temporaryFolder()
    const first = await drawScan(join(parent, 'drum.png'))
    await mkdir(join(parent, 'more'))
    const second = await drawScan(join(parent, 'more', 'drum.png'), 90)
    const folder = join(parent, 'job')
    const made = await scantling(
      'new',
      folder,
      first,
      second,
      '--title',
      'Drum',
      '--unit',
      'mm',
      '--by',
      'A. Rivet',
    )
    expect(made.stderr).toBe('')
    expect(made.code).toBe(0)
    expect(made.stdout).toContain('S2  drum-2.png  400 × 300 px, 300 dpi')
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(job).toMatchObject({ title: 'Drum', unit: 'mm', people: [{ id: 'P1', name: 'A. Rivet' }] })
    expect(job.sheets.map(({ scan }) => scan)).toEqual([
      { file: 'drum.png', sha256: await hashFile(first), page: 1, width: 400, height: 300, dpi: 300 },
      { file: 'drum-2.png', sha256: await hashFile(second), page: 1, width: 400, height: 300, dpi: 300 },
    ])
    expect(await readFile(join(folder, 'scans', 'drum-2.png'))).toEqual(await readFile(second))
  })

  test('new gives one sheet to a scan that is given twice, and says so', async () => {
    const parent = await temporaryFolder()
    const first = await drawScan(join(parent, 'drum.png'))
    await cp(first, join(parent, 'copy.png'))
    const folder = join(parent, 'job')
    const made = await scantling('new', folder, first, first, join(parent, 'copy.png'))
    expect(made.code).toBe(0)
    expect(made.stderr.match(/^Note: .* given before it, and has no second sheet\.$/gm)).toHaveLength(2)
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(job.sheets.map(({ scan }) => scan.file)).toEqual(['drum.png'])
    expect(Object.keys(await folderSnapshot(join(folder, 'scans')))).toEqual(['drum.png'])
  })

  test('edit makes a whole job, and table and check read it', async () => {
    const parent = await temporaryFolder()
    const folder = join(parent, 'job')
    await scantling('new', folder, await drawScan(join(parent, 'drum.png')))
    const empty = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    const scan = empty.sheets[0]?.scan
    if (scan === undefined) throw new Error('no sheet was made')
    const { marks, views, dimensions } = drumJob(scan)
    const edits = [
      ...marks.map((item) => ({ do: 'add-mark', item })),
      ...views.map((item) => ({ do: 'add-view', item })),
      ...dimensions.map((item) => ({ do: 'add-dimension', item })),
    ]
    const made = await editing(folder, edits, '--by', 'A. Rivet')
    expect(made).toEqual({
      code: 0,
      stderr: '',
      stdout: [
        'ok 1: add person A. Rivet\n',
        ...['M1', 'M2', 'M3', 'M4'].map((id, i) => `ok ${i + 2}: add mark ${id}\n`),
        'ok 6: add view “Elevation”\n',
        'ok 7: add dimension drum_length\n',
        'ok 8: add dimension drum_half\n',
      ].join(''),
    })
    const before = await folderSnapshot(folder)
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    for (const { by, at } of [...job.marks, ...job.dimensions.flatMap(({ evidence }) => evidence)]) {
      expect(by).toBe(job.people[0]?.id)
      expect(at).toMatch(/^\d{4}-\d\d-\d\dT/)
    }
    const json = await scantling('table', folder, '--format', 'json')
    expect(json).toEqual({ code: 0, stderr: '', stdout: tableJson(dimensionTable(job)) })
    const text = await scantling('table', folder)
    expect(text.stdout).toMatch(/^drum_length {2}6" +printed +agreed +1 {2}/m)
    expect(text.stdout).toContain('Cautions\n- ')
    expect((await scantling('table', folder, '--format', 'csv')).stdout).toContain('drum_half,')
    expect((await scantling('table', folder, '--format', 'md')).stdout).toContain('| `drum_half` |')
    expect(await folderSnapshot(folder)).toEqual(before)
  })

  test('the first edit that is refused ends it, and the ones before it stay', async () => {
    const { folder } = await workshopJob()
    const file = join(folder, '..', 'edits.ndjson')
    const edits = [point('M5', 1, 2), point('M5', 3, 4), point('M6', 5, 6)].map((item) =>
      JSON.stringify({ do: 'add-mark', item }),
    )
    await writeFile(file, `${edits[0]}\n\n${edits[1]}\n${edits[2]}\n`)
    const { code, stdout, stderr } = await scantling('edit', folder, file, '--by', 'a. rivet')
    expect(code).toBe(2)
    expect(stdout).toBe('ok 1: add mark M5\n')
    expect(stderr).toContain(`"${file}", line 3: `)
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(job.marks.map(({ id }) => id)).toEqual(['M1', 'M2', 'M3', 'M4', 'M5'])
  })

  test('an edit is answered once it is on disk, before the next one is given', async () => {
    const { folder } = await workshopJob()
    const child = spawn(process.execPath, [COMMAND_LINE, 'edit', folder, '--by', 'AR'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    })
    const answer = (): Promise<string> =>
      new Promise((resolve) => child.stdout.once('data', (data: Buffer) => resolve(data.toString())))
    for (const [i, id] of ['M5', 'M6'].entries()) {
      child.stdin.write(`${JSON.stringify({ do: 'add-mark', item: point(id, 1, 2) })}\n`)
      expect(await answer()).toBe(`ok ${i + 1}: add mark ${id}\n`)
      expect(await readFile(join(folder, 'history.ndjson'), 'utf8')).toContain(`"${id}"`)
    }
    child.kill('SIGKILL')
    await new Promise((resolve) => child.once('close', resolve))
    const table = await scantling('table', folder)
    expect(table.code).toBe(0)
    const next = await editing(folder, [{ do: 'add-mark', item: point('M7', 1, 2) }], '--by', 'AR')
    expect(next.stdout).toBe('ok 3: add mark M7\n')
    expect(next.stderr).toMatch(/^Note: The job was left open by .* a process that has ended; .*\.\n$/)
  })

  test('a job that somebody has open can be read but not edited, and it is said who has it', async () => {
    const { folder } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    await session.edit({ do: 'describe', set: { title: 'Drum, being edited' } }, 'AR')
    const before = await folderSnapshot(folder)
    expect((await scantling('table', folder)).stdout).toMatch(/^Drum, being edited\n/)
    const edit = `${JSON.stringify({ do: 'add-mark', item: point('M5', 1, 2) })}\n`
    const { code, stdout, stderr } = await scantlingProcess(['edit', folder], edit)
    expect([code, stdout]).toEqual([2, ''])
    expect(stderr).toContain(`(process ${process.pid}) since `)
    expect(stderr.trim().split('\n')).toHaveLength(1)
    expect(await folderSnapshot(folder)).toEqual(before)
    await session.close()
  })

  test('a lock that nobody here can give back is taken over by naming it as the refusal does, and no other', async () => {
    const { folder } = await workshopJob()
    const locked = join(folder, '.lock')
    const edit = (id: string) => ({ do: 'add-mark', item: point(id, 1, 2) })
    const holder = holderElsewhere()
    await writeFile(locked, writeHolder(holder))
    const refused = await editing(folder, [edit('M5')])
    expect([refused.code, refused.stdout]).toEqual([2, ''])
    expect(refused.stderr).toMatch(
      /^The job .+ can't be edited now: it is open for writing by rivet on bench-2\.invalid .+; to take it over, give --take-over [0-9a-f]+\.\n$/,
    )
    const [, named = ''] = /--take-over ([0-9a-f]+)/.exec(refused.stderr) ?? []

    const anew = { ...holder, token: 'f'.repeat(24) }
    await writeFile(locked, writeHolder(anew))
    const another = await editing(folder, [edit('M5')], '--take-over', named)
    expect(another.code).toBe(2)
    expect(another.stderr).toContain(`--take-over ${anew.token}`)

    const taken = await editing(folder, [edit('M5')], '--take-over', anew.token, '--by', 'AR')
    expect([taken.code, taken.stdout]).toEqual([0, 'ok 1: add mark M5\n'])
    expect(taken.stderr).toMatch(
      /^Note: The lock of rivet on .+ was taken over, as was asked; .+ not kept here\.\n$/,
    )
  })

  test('accept-scan takes a lock over in the same way, and says what that risks', async () => {
    const { folder } = await workshopJob()
    await writeFile(join(folder, '.lock'), 'damaged')
    const refused = await scantling('accept-scan', folder, 'S1')
    expect(refused.code).toBe(2)
    const [, named = ''] = /--take-over ([0-9a-f]+)/.exec(refused.stderr) ?? []
    const taken = await scantling('accept-scan', folder, 'S1', '--take-over', named)
    expect(taken.code).toBe(0)
    expect(taken.stderr).toContain('was taken over, as was asked')
    for (const command of ['edit', 'accept-scan', 'notes', 'mend']) {
      const { stdout } = await scantling(command, '--help')
      expect(stdout).toContain('what they do\nafter this is not kept in the job')
    }
  })

  test('a torn last line is told of on standard error, and the table is printed all the same', async () => {
    const { folder } = await workshopJob()
    await appendFile(join(folder, 'history.ndjson'), '{"n":1,"at"')
    const { code, stdout, stderr } = await scantling('table', folder, '--format', 'json')
    expect(code).toBe(0)
    expect(JSON.parse(stdout).rows).toHaveLength(2)
    expect(stderr).toMatch(/^Note: What follows edit 0 in .* was cut short while it was written/)
  })
})

describe('undo and redo among the edits', () => {
  test('take back and make again within the run, and a file from another system is read', async () => {
    const { folder } = await workshopJob()
    const lines = [
      JSON.stringify({ do: 'add-mark', item: point('M5', 1, 2) }),
      '{"do":"undo"}',
      '{"do":"redo"}',
      '{"do":"redo"}',
    ]
    const { code, stdout, stderr } = await scantlingGiven(
      `\uFEFF${lines.join('\r\n')}\r\n`,
      'edit',
      folder,
      '--by',
      'AR',
    )
    expect(stdout).toBe('ok 1: add mark M5\nok 2: undo add mark M5\nok 3: redo add mark M5\n')
    expect([code, stderr]).toEqual([2, 'Standard input, line 4: There is nothing to redo.\n'])
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(job.marks.at(-1)?.id).toBe('M5')
  })
})

describe('accept-scan', () => {
  test('accepts the scan as it is now, or a copy of another, and says to look at the marks', async () => {
    const { folder, scan } = await workshopJob()
    const nothing = await scantling('accept-scan', folder, 'S1', '--by', 'AR')
    expect(nothing).toMatchObject({
      code: 0,
      stdout: 'Sheet S1 has drum.png as it is: nothing to do.\n',
    })
    await drawScan(scan, 90)
    const changed = await scantling('table', folder)
    expect([changed.code, changed.stderr]).toEqual([
      2,
      expect.stringContaining(`"scantling accept-scan ${folder} S1"`),
    ])
    const { code, stdout, stderr } = await scantling('accept-scan', folder, 'S1', '--by', 'AR')
    expect([code, stderr]).toEqual([0, ''])
    expect(stdout).toMatch(/^ok 1: accept drum\.png for sheet S1\nLook at the marks/)
    expect((await scantling('table', folder)).code).toBe(0)

    await mkdir(join(folder, '..', 'toned'))
    const toned = await drawScan(join(folder, '..', 'toned', 'drum.png'), 30)
    // By what it was called before as well.
    const copied = await scantling('relink', folder, 'S1', toned, '--by', 'AR')
    expect(copied.stdout).toMatch(/^ok 2: accept drum-2\.png for sheet S1\n/)
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(job.sheets[0]?.scan).toMatchObject({ file: 'drum-2.png', sha256: await hashFile(toned) })
  })

  test('refuses a picture of another size, and an unknown sheet, and copies nothing', async () => {
    const { folder, scan } = await workshopJob()
    const small = join(folder, '..', 'small.png')
    await sharp(scan).resize(200, 150).toFile(small)
    const before = await folderSnapshot(folder)
    const refused = await scantling('accept-scan', folder, 'S1', small, '--by', 'AR')
    expect(refused.code).toBe(2)
    expect(refused.stderr).toMatch(/^Sheet S1 can't take the scan .*small\.png, .* 200 × 150 .* 400 × 300/)
    const unknown = await scantling('accept-scan', folder, 'S9', small, '--by', 'AR')
    expect(unknown.stderr).toMatch(/^There is no sheet S9 in the job .*; its sheets are: S1\.\n$/)
    expect(await folderSnapshot(folder)).toEqual(before)
  })
})

describe('the width of a text table', () => {
  afterEach(() => vi.unstubAllEnvs())

  test.each([
    ['60', 60, 120],
    ['150', 150, 120],
    ['', 120, 150],
    ['wide', 120, 150],
    ['0', 120, 150],
  ])('COLUMNS=%j is followed where there is no terminal', async (columns, width, other) => {
    const { folder } = await workshopJob()
    vi.stubEnv('COLUMNS', columns)
    const { stdout } = await scantling('table', folder)
    const job = parseJobText(await readFile(join(folder, 'job.json'), 'utf8'))
    expect(stdout).toBe(tableText(dimensionTable(job), width))
    expect(stdout).not.toBe(tableText(dimensionTable(job), other))
  })
})

describe('check', () => {
  test('lists what is disputed and what does not hold, and says so by exit code 1', async () => {
    const { folder } = await workshopJob((job) => ({
      ...job,
      dimensions: job.dimensions.map((dimension) =>
        dimension.name === 'drum_length'
          ? {
              ...dimension,
              evidence: dimension.evidence.map((e) => (e.basis === 'printed' ? { ...e, text: '7"' } : e)),
            }
          : dimension,
      ),
      relations: [{ id: 'Q1', text: 'drum_length = drum_half' }],
    }))
    const { code, stdout, stderr } = await scantlingProcess(['check', folder])
    expect(stderr).toBe('')
    expect(stdout).toMatch(/^Disputed\n {2}drum_length: /)
    expect(stdout).toMatch(/Does not hold\n {2}Q1 \(drum_length = drum_half\): out by 3 1\/2"; /)
    expect(code).toBe(1)
  })

  test('names what has no value without failing', async () => {
    const { folder } = await workshopJob((job) => ({
      ...job,
      dimensions: [...job.dimensions, { name: 'rim', label: 'Rim', kind: 'length', evidence: [] }],
    }))
    const { code, stdout } = await scantling('check', folder)
    expect(stdout).toMatch(/^No value\n {2}rim: /)
    expect(code).toBe(0)
  })

  test('a relation that could not be checked, and a figure that is hard to read, are named without failing', async () => {
    const { folder } = await workshopJob((job) => ({
      ...job,
      dimensions: [
        ...job.dimensions,
        {
          name: 'rim',
          label: 'Rim',
          kind: 'length',
          evidence: [{ id: 'E1', basis: 'printed', text: '1 1/2"', sheet: 'S1', legibility: 'doubtful' }],
        },
      ],
      relations: [{ id: 'Q1', text: 'drum_half = rim' }],
    }))
    const { code, stdout } = await scantling('check', folder)
    expect(stdout).not.toContain('Does not hold')
    expect(stdout).toMatch(/Figures to settle\n {2}rim, figure E1 \(1 1\/2"\): Hard to read/)
    expect(stdout).toMatch(/Not checked\n {2}Q1 \(drum_half = rim\): rim has no value\.\n$/)
    expect(code).toBe(0)
  })

  test('its help says what each exit code means, and promises no more', async () => {
    const { stdout } = await scantling('check', '--help')
    expect(stdout).toMatch(/ 0 {2}nothing is disputed.*may still have no value.* 1 {2}.* 2 {2}/s)
    expect(stdout).not.toMatch(/ready|shop/)
  })
})

describe('the program itself', () => {
  test('prints the JSON Schemas and nothing else', async () => {
    for (const args of [[], ['job'], ['table'], ['edit']]) {
      const { code, stdout, stderr } = await scantling('schema', ...args)
      expect([code, stderr]).toEqual([0, ''])
      expect(JSON.parse(stdout)).toHaveProperty('$schema')
    }
  })

  test('shows its help when it is asked, or given nothing to do', async () => {
    const help = await scantlingProcess(['--help'])
    expect(help.code).toBe(0)
    for (const word of ['new', 'edit', 'accept-scan', 'table', 'check', 'schema', 'Exit codes'])
      expect(help.stdout).toContain(word)
    expect(await scantling()).toEqual(help)
    for (const command of ['new', 'edit', 'accept-scan', 'table', 'check', 'schema']) {
      const { code, stdout, stderr } = await scantling(command, '--help')
      expect([code, stderr]).toEqual([0, ''])
      expect(stdout).toMatch(/Examples?:\n {2}\$ /)
    }
    expect((await scantling('--version')).stdout).toMatch(/^\d+\.\d+\.\d+\n$/)
  })

  test('is quiet when its reader goes away', async () => {
    const { folder } = await workshopJob()
    const child = spawn(process.execPath, [COMMAND_LINE, 'table', folder], {
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    let errors = ''
    child.stderr.on('data', (data: Buffer) => {
      errors += data.toString()
    })
    child.stdout.destroy()
    const code = await new Promise((resolve) => child.once('close', resolve))
    expect([code, errors]).toEqual([0, ''])
  })

  test('says so when it has not been built', async () => {
    const folder = await temporaryFolder()
    await mkdir(join(folder, 'bin'))
    await writeFile(join(folder, 'package.json'), '{"type":"module"}')
    await cp(join(import.meta.dirname, '../../../bin/scantling.js'), join(folder, 'bin/scantling.js'))
    expect(await runProgram(join(folder, 'bin/scantling.js'), ['--help'])).toEqual({
      code: 2,
      stdout: '',
      stderr: 'Scantling has not been built yet: run npm run build\n',
    })
  })
})
