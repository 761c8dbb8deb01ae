import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import type { SimulatedRow } from '../../../src/core/ledger/simulate-row.ts'
import { scantling } from '../fixtures/command-line.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const SAMPLE = 'samples/deck-ventilator'

let readme: string
beforeAll(async () => {
  readme = await readFile('README.md', 'utf8')
})
/** The line of a printed table or of the README that begins with a dimension's name, its gaps closed up. */
const lineOf = (text: string, name: string): string =>
  text
    .split('\n')
    .find((line) => line.startsWith(`${name} `))
    ?.replace(/\s+/g, ' ')
    .trim() ?? ''

describe('the sample, as the README shows it', () => {
  test('its table has the lines that the README quotes, and reading it changes nothing', async () => {
    const before = await folderSnapshot(SAMPLE)
    const { code, stdout, stderr } = await scantling('table', SAMPLE)
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    for (const figure of [
      'hood_od 11.475" ± 0.069", near 11 1/2" (11 7/16" to 11 1/2") scaled',
      'neck_height 3 5/8" printed disputed',
    ]) {
      expect(readme.replace(/ +/g, ' ')).toContain(figure)
      expect(stdout.replace(/ +/g, ' ')).toContain(figure)
    }
    expect(await folderSnapshot(SAMPLE)).toEqual(before)
  })

  test('one dimension from start to end gives the line that the README ends with', async () => {
    const folder = join(await temporaryFolder(), 'ventilator')
    const scan = join(SAMPLE, 'scans', 'sheet-1.jpg')
    expect(
      (await scantling('new', folder, scan, '--title', 'Deck ventilator', '--by', 'A. Rivet')).code,
    ).toBe(0)
    const edited = await scantling('edit', folder, 'samples/one-dimension.ndjson', '--by', 'A. Rivet')
    expect({ code: edited.code, stderr: edited.stderr }).toEqual({ code: 0, stderr: '' })
    const { stdout } = await scantling('table', folder)
    expect(lineOf(stdout, 'hood_od')).toBe(lineOf(readme.slice(readme.indexOf('**4. Read it.**')), 'hood_od'))
    expect(lineOf(stdout, 'hood_od')).toContain('11.523" ± 0.094", near 11 1/2"')
  })

  test('check names the misprint, the relation it breaks and the misread reference', async () => {
    const { code, stdout } = await scantling('check', SAMPLE)
    expect(code).toBe(1)
    expect(stdout).toMatch(/Disputed\n {2}neck_height:/)
    expect(stdout).toMatch(/Does not hold\n {2}heights /)
    expect(stdout).toMatch(/Scales to settle\n.*Figured size 14 1\/4" does not fit the others/)
  })
})

describe('the commands', () => {
  test('are all in the README, and the README has no other', async () => {
    const help = (await scantling('--help')).stdout
    const list = help.slice(help.indexOf('Commands:'), help.indexOf('A job is a folder'))
    const commands = [...list.matchAll(/^ {2}([\w-]+) /gm)].map(([, name]) => name)
    const shown = [...readme.matchAll(/^\| `npx scantling ([\w-]+)/gm)].map(([, name]) => name)
    expect(commands.length).toBeGreaterThan(8)
    expect([...new Set(shown)].sort()).toEqual([...commands].sort())
  })
})

describe('a dimension by Monte Carlo', () => {
  test('is printed beside first order, with the verdict', async () => {
    const { code, stdout } = await scantling('table', SAMPLE, '--simulate', 'hood_od', '--trials', '4000')
    expect(code).toBe(0)
    expect(stdout).toMatch(/^hood_od, 4000 trials\n {2}first order {2}11\.4755", u 0\.035,/)
    expect(stdout).toContain('First order is good enough')
  })

  test('is the same for the same seed, in JSON too', async () => {
    const run = async (seed: string): Promise<SimulatedRow> => {
      const args = ['--simulate', 'cone_angle', '--trials', '500', '--seed', seed, '--format', 'json']
      return JSON.parse((await scantling('table', SAMPLE, ...args)).stdout)
    }
    const [one, again, other] = await Promise.all([run('1'), run('1'), run('2')])
    expect(one).toEqual(again)
    expect(one.simulated.mean).not.toBe(other.simulated.mean)
  })

  test.each([
    [['--simulate', 'drum_od'], /^Dimension drum_od is taken as exact.*\.\n$/],
    [['--simulate', 'nothing'], /^There is no dimension nothing.*\.\n$/],
    [['--simulate', 'hood_od', '--trials', '5'], /whole number from 100 to/],
    [['--simulate', 'hood_od', '--format', 'csv'], /text or json/],
  ])('%s is refused in one sentence', async (args, sentence) => {
    const { code, stdout, stderr } = await scantling('table', SAMPLE, ...args)
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' })
    expect(stderr).toMatch(sentence)
  })
})
