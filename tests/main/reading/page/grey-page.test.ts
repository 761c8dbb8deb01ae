import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import { cutTiles } from '../../../../src/main/services/pictures/pyramid/cut-tiles.ts'
import { lookAtPage } from '../../../../src/main/services/pictures/pyramid/open-page.ts'
import type { GreyPage } from '../../../../src/main/services/reading/page/grey-page.ts'
import { openGreyPage } from '../../../../src/main/services/reading/page/open-grey-page.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const WIDTH = 1300
const HEIGHT = 1601

/** A number from 0 to 255 for each pixel, that looks like nothing. */
const value = (x: number, y: number): number => ((x * 7919 + y * 104_729 + ((x * y) % 613) * 31) >>> 3) % 256

async function pages(path: string): Promise<{ file: GreyPage; tiles: GreyPage }> {
  const page = { path, page: 1 }
  const size = { width: WIDTH, height: HEIGHT }
  const { kind } = await lookAtPage(page)
  const folder = await temporaryFolder()
  await cutTiles({ file: page, kind, levels: pyramidLevels(WIDTH, HEIGHT), folder }, () => undefined)
  return {
    file: openGreyPage({ size, from: { is: 'file', file: page } }),
    tiles: openGreyPage({ size, from: { is: 'tiles', folder, type: kind.type } }),
  }
}

/** Parts that begin and end within tiles, at their edges, and at the page's own. */
const PARTS = [
  { left: 0, top: 0, width: WIDTH, height: 40 },
  { left: 500, top: 505, width: 30, height: 20 },
  { left: 512, top: 512, width: 512, height: 512 },
  { left: 1299, top: 1590, width: 1, height: 11 },
]

describe('the greys of a part of a page', () => {
  test.each([
    ['PNG', 8],
    ['TIFF in strips', 8],
    ['PNG of 16 bits', 16],
  ])('are the very values of a grey scan: %s', async (kind, bits) => {
    const path = join(await temporaryFolder(), 'scan')
    const raw = { width: WIDTH, height: HEIGHT, channels: 1 } as const
    // Of sixteen bits the lower eight say something else.
    const samples = bits === 16 ? new Uint16Array(WIDTH * HEIGHT) : new Uint8Array(WIDTH * HEIGHT)
    for (let y = 0; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH; x++)
        samples[y * WIDTH + x] = bits === 16 ? value(x, y) * 256 + value(y, x) : value(x, y)
    const picture = sharp(samples, { raw }).toColourspace(bits === 16 ? 'grey16' : 'b-w')
    await writeFile(
      path,
      await (kind.startsWith('PNG') ? picture.png() : picture.tiff({ compression: 'lzw' })).toBuffer(),
    )
    const { file, tiles } = await pages(path)
    for (const part of PARTS) {
      const wanted = Uint8Array.from({ length: part.width * part.height }, (_, i) =>
        value(part.left + (i % part.width), part.top + Math.floor(i / part.width)),
      )
      for (const page of [file, tiles]) {
        const { data, ...area } = await page.greys(part, 0)
        expect(area).toEqual(part)
        expect(Buffer.compare(Buffer.from(data), Buffer.from(wanted))).toBe(0)
      }
    }
  })

  test('of a colour scan are its luminance (ITU-R BT.709), from its tiles as near as those are', async () => {
    const path = join(await temporaryFolder(), 'scan.png')
    const raw = { width: WIDTH, height: HEIGHT, channels: 3 } as const
    const rgb = new Uint8Array(WIDTH * HEIGHT * 3)
    for (let y = 0; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH; x++) rgb.set([x % 256, y % 256, 128], 3 * (y * WIDTH + x))
    await sharp(rgb, { raw }).png().toFile(path)
    const { file, tiles } = await pages(path)
    const part = { left: 600, top: 700, width: 60, height: 50 }
    const wanted = (i: number): number =>
      0.2126 * ((600 + (i % 60)) % 256) + 0.7152 * ((700 + Math.floor(i / 60)) % 256) + 0.0722 * 128
    const furthest = async (page: GreyPage): Promise<number> => {
      const { data } = await page.greys(part, 0)
      return Math.max(...Array.from(data, (grey, i) => Math.abs(grey - wanted(i))))
    }
    expect(await furthest(file)).toBeLessThanOrEqual(0.5)
    expect(await furthest(tiles)).toBeLessThanOrEqual(6)
  })

  test('with its sides halved are the means of what they show, whether from tiles or from the file', async () => {
    const path = join(await temporaryFolder(), 'scan.png')
    const raw = { width: WIDTH, height: HEIGHT, channels: 1 } as const
    const slope = (x: number, y: number): number => Math.round(x / 8 + y / 20)
    const samples = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) =>
      slope(i % WIDTH, Math.floor(i / WIDTH)),
    )
    await sharp(samples, { raw }).toColourspace('b-w').png().toFile(path)
    const { file, tiles } = await pages(path)
    const part = { left: 20, top: 300, width: 200, height: 100 }
    for (const page of [file, tiles]) {
      const { data } = await page.greys(part, 2)
      const off = Array.from(data, (grey, i) => {
        const [x, y] = [4 * (20 + (i % 200)) + 1.5, 4 * (300 + Math.floor(i / 200)) + 1.5]
        return Math.abs(grey - (x / 8 + y / 20))
      })
      expect(Math.max(...off)).toBeLessThanOrEqual(1.5)
    }
  })
})
