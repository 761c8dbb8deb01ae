import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { scantling } from '../fixtures/command-line.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { ALL_KINDS } from '../scans/kinds/all-kinds.ts'

let home: string
beforeAll(async () => {
  home = await temporaryFolder()
  process.env['SCANTLING_HOME'] = home
})
afterAll(() => {
  delete process.env['SCANTLING_HOME']
})

async function aFile(file: string): Promise<string> {
  const kind = ALL_KINDS.find((one) => one.file === file)
  if (kind === undefined) throw new Error(`${file} is not among the kinds`)
  const path = join(await temporaryFolder(), file)
  await writeFile(path, (await kind.make()).bytes)
  return path
}

const sheetsOf = async (folder: string) =>
  parseJobText(await readFile(join(folder, 'job.json'), 'utf8')).sheets

describe('a scan of many pages on the command line', () => {
  test('gives a sheet to each page that is named', async () => {
    const folder = join(await temporaryFolder(), 'job')
    const scan = await aFile('three pages II.tif')
    const made = await scantling('new', folder, scan, '--pages', '3,1', '--dpi', '350')
    expect(made.code).toBe(0)
    expect(made.stderr).toContain('Page 3 of three pages II.tif asks to be shown turned')
    expect(made.stdout).toContain('S1  three pages II.tif, page 3  113 × 41 px, 350 dpi')
    expect(await sheetsOf(folder)).toMatchObject([{ scan: { page: 3, dpi: 350 } }, { scan: { page: 1 } }])
  })

  test('gives a sheet to all of them', async () => {
    const folder = join(await temporaryFolder(), 'job')
    expect((await scantling('new', folder, await aFile('three pages MM.tif'), '--all-pages')).code).toBe(0)
    expect((await sheetsOf(folder)).map(({ title }) => title)).toEqual([
      'three pages MM, page 1',
      'three pages MM, page 2',
      'three pages MM, page 3',
    ])
  })

  test('without a choice gives one to the first, and says so', async () => {
    const folder = join(await temporaryFolder(), 'job')
    const made = await scantling('new', folder, await aFile('three pages II.tif'))
    expect(made.stderr).toBe('Note: The scan three pages II.tif has 3 pages, and only page 1 has a sheet.\n')
    expect(await sheetsOf(folder)).toHaveLength(1)
  })

  test.each([
    [['--pages', '3-1'], '"3-1" names no pages: write them as in 1-3,5.\n'],
    [['--pages', '1', '--all-pages'], 'Name pages or take all of them, not both'],
    [['--pages', '9'], 'has 3 pages, and no page 9.\n'],
  ])('is refused with %j, and no job is made', async (args, sentence) => {
    const folder = join(await temporaryFolder(), 'job')
    const made = await scantling('new', folder, await aFile('three pages II.tif'), ...args)
    expect(made.code).toBe(2)
    expect(made.stderr).toContain(sentence)
    await expect(readFile(join(folder, 'job.json'))).rejects.toThrow()
  })
})

describe('a PDF on the command line', () => {
  test('is drawn at as many dots to the inch as is said', async () => {
    const folder = join(await temporaryFolder(), 'job')
    expect((await scantling('new', folder, await aFile('drawn lines.pdf'), '--draw-at', '200')).code).toBe(0)
    expect(await sheetsOf(folder)).toMatchObject([{ scan: { width: 500, height: 325, drawnAt: 200 } }])
    const again = await scantling(
      'accept-scan',
      folder,
      'S1',
      await aFile('drawn lines.pdf'),
      '--by',
      'A. Rivet',
    )
    expect(again).toMatchObject({ code: 0, stdout: expect.stringContaining('for sheet S1') })
    expect(await sheetsOf(folder)).toMatchObject([{ scan: { width: 500, height: 325, drawnAt: 200 } }])
  })

  test('that is locked is opened by the password in a file, and by no other', async () => {
    const parent = await temporaryFolder()
    const scan = await aFile('locked by RC4 of 128 bits.pdf')
    const [right, wrong] = [join(parent, 'right.txt'), join(parent, 'wrong.txt')]
    await writeFile(right, 'Valve gear 7\n')
    await writeFile(wrong, 'brass\n')
    const locked = await scantling('new', join(parent, 'a'), scan)
    expect([locked.code, locked.stderr]).toEqual([2, expect.stringContaining('is locked')])
    const refused = await scantling('new', join(parent, 'b'), scan, '--password-file', wrong)
    expect([refused.code, refused.stderr]).toEqual([2, expect.stringContaining('does not open')])
    const made = await scantling('new', join(parent, 'c'), scan, '--password-file', right)
    expect(made.code).toBe(0)
    expect(await readFile(join(parent, 'c', 'job.json'), 'utf8')).not.toContain('Valve gear')
  })
})

describe('the limits on the command line', () => {
  test('are shown, set for what is brought in afterwards, and made usual again', async () => {
    expect((await scantling('limits')).stdout).toContain('pixels   1,000,000,000 pixels\n')
    expect((await scantling('limits', '--set', 'seconds=99', '--set', 'pixels=1000000')).code).toBe(0)
    expect(JSON.parse((await scantling('limits', '--format', 'json')).stdout)).toMatchObject({ seconds: 99 })
    const folder = join(await temporaryFolder(), 'job')
    const refused = await scantling('new', folder, await aFile('drawn lines.pdf'), '--draw-at', '600')
    expect(refused.stderr).toContain('more than the 1,000,000 that are taken in')
    expect((await scantling('limits', '--usual')).stdout).toContain('seconds  120 s\n')
  })

  test.each([
    ['pixles=1', 2],
    ['seconds=0', 2],
    ['seconds', 2],
  ])('are not set to %s', async (setting, code) => {
    const answer = await scantling('limits', '--set', setting)
    expect(answer.code).toBe(code)
    expect(answer.stderr).toMatch(/^[^\n]+\.\n$/)
  })
})
