import { mkdir, readFile, rm, symlink, truncate, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import { readManifest, writeManifest } from '../../../../src/main/services/pictures/cache/manifest.ts'
import { tileFile } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const SCAN = { file: 'plan.tif', sha256: 'ab'.repeat(32), page: 2, width: 1300, height: 1100, drawnAt: 400 }
const PAGE = { scan: SCAN, levels: pyramidLevels(SCAN.width, SCAN.height) }
const KIND = { type: 'png', exact: true } as const
const LAST = tileFile({ level: 0, column: 2, row: 2 }, 'png')

/** A folder with a file for each picture; what they hold is not looked at. */
async function picturesOf(): Promise<string> {
  const folder = await temporaryFolder()
  for (const name of ['overview.jpg', 'thumbnail.jpg', 'ground.png'])
    await writeFile(join(folder, name), name)
  for (const { level, columns, rows } of PAGE.levels) {
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const path = join(folder, 'tiles', tileFile({ level, column, row }, 'png'))
        await mkdir(dirname(path), { recursive: true })
        await writeFile(path, `tile ${'.'.repeat(10 * level + 3 * row + column)}`)
      }
    }
  }
  await writeManifest(folder, PAGE, KIND, 'sharp 0, libvips 0', 'test')
  return folder
}

async function rewrite(folder: string, change: Record<string, unknown>): Promise<void> {
  const path = join(folder, 'manifest.json')
  const manifest = JSON.parse(await readFile(path, 'utf8')) as Record<string, unknown>
  await writeFile(path, JSON.stringify({ ...manifest, ...change }))
}

describe('pictures that were made before', () => {
  test('are used when their manifest suits the page and every file', async () => {
    const folder = await picturesOf()
    const manifest = await readManifest(folder, PAGE)
    expect(manifest).toMatchObject({ ...KIND, sha256: SCAN.sha256, page: 2, drawnAt: 400 })
    expect(manifest?.tiles.map(({ length }) => length)).toEqual([9, 4, 1])
    expect(await readManifest(folder, { ...PAGE, scan: { ...SCAN, sha256: 'AB'.repeat(32) } })).toEqual(
      manifest,
    )
  })

  test.each<[what: string, change: Record<string, unknown>]>([
    ['the way of making', { make: 'v1' }],
    [
      'the scan, though the first half of its SHA-256 is the same',
      { sha256: 'ab'.repeat(16) + 'cd'.repeat(16) },
    ],
    ['the page', { page: 1 }],
    ['the width', { width: 1301 }],
    ['the height', { height: 1099 }],
    ['the resolution at which it was drawn', { drawnAt: 300 }],
    ['the size of tiles', { tile: 256 }],
    ['how tiles are kept', { type: 'jpeg' }],
    ['the bytes of a tile', { tiles: [[1, 1, 1, 1, 1, 1, 1, 1, 1], [1, 1, 1, 1], [1]] }],
    ['how many tiles', { tiles: [] }],
    ['a picture of the whole', { whole: { 'overview.jpg': 12, 'thumbnail.jpg': 13 } }],
    ['the sense of a value', { exact: 'yes' }],
    ['something that it does not know', { also: 1 }],
  ])('are not used when the manifest differs in %s', async (_, change) => {
    const folder = await picturesOf()
    await rewrite(folder, {})
    expect(await readManifest(folder, PAGE)).not.toBeNull()
    await rewrite(folder, change)
    expect(await readManifest(folder, PAGE)).toBeNull()
  })

  test.each<[what: string, harm: (folder: string) => Promise<unknown>]>([
    ['there is no manifest', (folder) => rm(join(folder, 'manifest.json'))],
    ['the manifest is torn', (folder) => truncate(join(folder, 'manifest.json'), 100)],
    ['a tile is missing', (folder) => rm(join(folder, 'tiles', LAST))],
    ['a tile is shorter than it was', (folder) => truncate(join(folder, 'tiles', LAST), 4)],
    [
      'a tile is longer than it was',
      (folder) => writeFile(join(folder, 'tiles', LAST), 'tile and more than it was'),
    ],
    ['the overview is shorter than it was', (folder) => truncate(join(folder, 'overview.jpg'), 3)],
    ['the ground is missing', (folder) => rm(join(folder, 'ground.png'))],
    [
      'a folder stands where a tile should',
      async (folder) => {
        await rm(join(folder, 'tiles', LAST))
        await mkdir(join(folder, 'tiles', LAST))
      },
    ],
    [
      'a link stands where a tile should that leads nowhere',
      async (folder) => {
        await rm(join(folder, 'tiles', LAST))
        await symlink('/nowhere/at/all', join(folder, 'tiles', LAST))
      },
    ],
  ])('are not used when %s', async (_, harm) => {
    const folder = await picturesOf()
    await harm(folder)
    expect(await readManifest(folder, PAGE)).toBeNull()
  })

  test('are not those of a page that is drawn at no stated resolution', async () => {
    const folder = await picturesOf()
    const { drawnAt, ...scan } = SCAN
    expect(await readManifest(folder, { ...PAGE, scan })).toBeNull()
  })
})

test('a manifest is not written while a tile is missing', async () => {
  const folder = await picturesOf()
  await rm(join(folder, 'manifest.json'))
  await rm(join(folder, 'tiles', LAST))
  await expect(writeManifest(folder, PAGE, KIND, 'none', 'test')).rejects.toThrow('not every tile')
  expect(await readManifest(folder, PAGE)).toBeNull()
})
