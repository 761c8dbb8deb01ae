import { readdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { scantling, scantlingGiven, scantlingProcess } from '../fixtures/command-line.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { ALL_KINDS } from '../scans/kinds/all-kinds.ts'

let home: string
let sheet: string
beforeAll(async () => {
  home = await temporaryFolder()
  process.env['SCANTLING_HOME'] = home
  sheet = join(await temporaryFolder(), 'sheet.png')
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="600" height="400"><rect width="100%" height="100%" fill="#fff"/><g font-family="sans-serif" font-size="40"><text x="100" y="100">14</text><text x="400" y="300">27</text></g></svg>`
  await sharp(Buffer.from(svg)).greyscale().png().toFile(sheet)
})
afterAll(() => {
  delete process.env['SCANTLING_HOME']
})

interface Figures {
  figures: { box: number[]; text: string | null; value: number | null; unit: string | null }[]
}

const figuresOf = (stdout: string): Figures['figures'] => (JSON.parse(stdout) as Figures).figures

const middle = ([x = 0, y = 0, width = 0, height = 0]: readonly number[]): [number, number] => [
  x + width / 2,
  y + height / 2,
]

describe('the figures of a scan on the command line', () => {
  test('of boxes come as JSON in the order of the boxes, and as nothing else', async () => {
    const args = ['--box', '390,260,70,60', '--box', '90,60,70,60', '--format', 'json']
    const { code, stdout, stderr } = await scantlingProcess(['read', sheet, ...args])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const figures = figuresOf(stdout)
    expect(figures).toHaveLength(2)
    for (const [i, [x, y]] of [
      [425, 290],
      [125, 90],
    ].entries()) {
      const figure = figures[i]
      expect(Object.keys(figure ?? {})).toEqual([
        'box',
        'angle',
        'text',
        'value',
        'unit',
        'kind',
        'clear',
        'probability',
        'alternatives',
      ])
      const [across, down] = middle(figure?.box ?? [])
      expect(Math.hypot(across - (x ?? 0), down - (y ?? 0))).toBeLessThan(40)
    }
    expect(await readdir(join(home, 'settings', 'temporary'))).toEqual([])
  })

  test('of boxes in a file and on standard input are the same, after those of --box', async () => {
    const boxes = join(await temporaryFolder(), 'boxes.txt')
    await writeFile(boxes, '390, 260, 70, 60\r\n\n90,60,70,60\n')
    const ofFile = await scantling('read', sheet, '--boxes', boxes, '--format', 'json')
    const first = ['--box', '390,260,70,60']
    const ofInput = await scantlingGiven(
      '90,60,70,60\n',
      'read',
      sheet,
      ...first,
      '--boxes',
      '-',
      '--format',
      'json',
    )
    expect(ofFile.code).toBe(0)
    expect(figuresOf(ofFile.stdout)).toHaveLength(2)
    expect(ofInput).toEqual(ofFile)
  })

  test('of the whole page are found without boxes', async () => {
    const { code, stdout, stderr } = await scantling('read', sheet, '--format', 'json')
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(Array.isArray(figuresOf(stdout))).toBe(true)
  })

  test('are read of a page of a PDF whose scan is JPEG 2000', async () => {
    const kind = ALL_KINDS.find(({ file }) => file === 'JPEG 2000, grey.pdf')
    const scan = join(await temporaryFolder(), 'plan.pdf')
    await writeFile(scan, (await kind?.make())?.bytes ?? '')
    const read = await scantling('read', scan, '--page', '1', '--box', '10,5,40,20', '--format', 'json')
    expect(read.code).toBe(0)
    expect(figuresOf(read.stdout)).toHaveLength(1)
    const none = await scantling('read', scan, '--page', '7', '--box', '10,5,40,20')
    expect(none).toEqual({ code: 2, stdout: '', stderr: 'The scan plan.pdf has one page, and no page 7.\n' })
  })

  test.each<[string[], RegExp]>([
    [['--box', '1,2,3'], /--box can't be "1,2,3"; write X,Y,WIDTH,HEIGHT in pixels/],
    [['--box', '1,2,0,4'], /--box can't be/],
    [
      ['--box', '5000,20,40,40'],
      /^The box 5000,20,40,40: That box lies off the page, which has 600 × 400 pixels/,
    ],
    [['--box', '10,20,40000,40'], /^The box 10,20,40000,40: That box is more than 4,800 pixels wide or high/],
    [['--page', '0', '--box', '1,2,30,40'], /--page can't be "0"; give the number of a page, from 1/],
    [['--page', '2', '--box', '1,2,30,40'], /has one page, and no page 2/],
    [['--boxes', '/nowhere/boxes.txt'], /^The boxes in \/nowhere\/boxes.txt can't be read because/],
    [['--unit', 'cubits'], /allowed choices are in, mm/],
  ])('are refused for %s in one sentence', async (args, sentence) => {
    const { code, stdout, stderr } = await scantling('read', sheet, ...args)
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' })
    expect(stderr).toMatch(sentence)
    expect(stderr).toMatch(/^[^\n]+\.\n$/)
  })

  test('are refused for a line that is no box, which is named, and for a scan that is none', async () => {
    const given = await scantlingGiven('1,2,30,40\nhere\n', 'read', sheet, '--boxes', '-')
    expect(given.stderr).toMatch(/^Standard input, line 2: "here" is no box; write X,Y,WIDTH,HEIGHT/)
    const noScan = await scantling('read', '/nowhere/plan.tif', '--format', 'json')
    expect(noScan.code).toBe(2)
    expect(JSON.parse(noScan.stdout)).toHaveProperty('error.words', noScan.stderr.trim())
  })
})
