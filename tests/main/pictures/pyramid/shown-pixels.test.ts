import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp, { type Color, type Sharp } from 'sharp'
import { beforeAll, describe, expect, test } from 'vitest'
import { TILE } from '../../../../src/contract/picture-pyramid.ts'
import { tileFile } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import { makePictures } from '../../../../src/main/services/pictures/process/make-pictures.ts'
import { lookAtPage } from '../../../../src/main/services/pictures/pyramid/open-page.ts'
import { drawSlope } from '../../fixtures/draw-slope.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const WIDTH = 1300
const HEIGHT = 1100

/** The pictures of a scan, made in this process. @param what whether tiles are made as well */
async function made(draw: (path: string) => Promise<unknown>, name: string, what: 'all' | 'whole' = 'all') {
  const folder = await temporaryFolder()
  const [path, pictures, tiles] = [name, 'pictures', 'tiles'].map((one) => join(folder, one)) as [
    string,
    string,
    string,
  ]
  await draw(path)
  const file = { path, page: 1 }
  const { kind, size } = await lookAtPage(file)
  for (const place of [pictures, tiles]) await mkdir(place)
  const wanted = { file, size }
  await makePictures(
    { make: 'whole', wanted: { ...wanted, folder: pictures, mark: 'test' } },
    () => undefined,
  )
  if (what === 'all')
    await makePictures({ make: 'tiles', wanted: { ...wanted, folder: tiles, kind } }, () => undefined)
  return {
    path,
    whole: (name: string): Promise<Buffer> => readFile(join(pictures, name)),
    tile: (level: number, column: number, row: number): Promise<Buffer> =>
      readFile(join(tiles, tileFile({ level, column, row }, kind.type))),
  }
}

const pixels = async (input: Sharp): Promise<Buffer> =>
  input.removeAlpha().toColourspace('srgb').raw().toBuffer()

function differences(a: Buffer, b: Buffer): { mean: number; most: number } {
  expect(a.length).toBe(b.length)
  let [sum, most] = [0, 0]
  for (let i = 0; i < a.length; i++) {
    const off = Math.abs((a[i] ?? 0) - (b[i] ?? 0))
    sum += off
    most = Math.max(most, off)
  }
  return { mean: sum / a.length, most }
}

/** Of the plan that several look at. */
let slope: Awaited<ReturnType<typeof made>>
beforeAll(async () => {
  slope = await made(drawSlope, 'plan.png')
})

describe('the pictures of a sheet', () => {
  // Quality 90 quantises a smooth picture by a few grey values; ten is far below a slip of a pixel at a line.
  test('show in each tile of full size the pixels of the scan that lie there', async () => {
    const { path, tile } = slope
    for (const [column, row] of [
      [0, 0],
      [1, 1],
      [2, 2],
      [2, 0],
    ] as const) {
      const [left, top] = [column * TILE, row * TILE]
      const width = Math.min(TILE, WIDTH - left)
      const height = Math.min(TILE, HEIGHT - top)
      const expected = await pixels(sharp(path).extract({ left, top, width, height }))
      const { mean, most } = differences(await pixels(sharp(await tile(0, column, row))), expected)
      expect(mean).toBeLessThan(1)
      expect(most).toBeLessThanOrEqual(10)
    }
  })

  test('show at half size the mean of four pixels each', async () => {
    const { path, tile } = slope
    const data = await pixels(sharp(path))
    const expected = Buffer.alloc(TILE * TILE * 3)
    for (let y = 0; y < TILE; y++) {
      for (let x = 0; x < TILE; x++) {
        for (let c = 0; c < 3; c++) {
          const at = (dx: number, dy: number): number =>
            data[3 * ((2 * y + dy) * WIDTH + 2 * x + dx) + c] ?? 0
          expected[3 * (y * TILE + x) + c] = Math.round((at(0, 0) + at(1, 0) + at(0, 1) + at(1, 1)) / 4)
        }
      }
    }
    const { mean, most } = differences(await pixels(sharp(await tile(1, 0, 0))), expected)
    expect(mean).toBeLessThan(1)
    expect(most).toBeLessThanOrEqual(10)
  })

  test('of the whole are the sheet brought down to the size that was said, and a small one, and its ground', async () => {
    const { path, whole } = await made((path) => drawSlope(path, 3000, 1500), 'plan.png')
    const expected = await pixels(sharp(path).resize(2048, 1024, { fit: 'fill' }))
    const overview = await whole('overview.jpg')
    expect(await sharp(overview).metadata()).toMatchObject({ width: 2048, height: 1024 })
    const { mean, most } = differences(await pixels(sharp(overview)), expected)
    expect(mean).toBeLessThan(1.5)
    expect(most).toBeLessThanOrEqual(14)
    expect(await sharp(await whole('thumbnail.jpg')).metadata()).toMatchObject({
      format: 'jpeg',
      width: 360,
      height: 180,
    })
    expect(await sharp(await whole('ground.png')).metadata()).toMatchObject({
      format: 'png',
      width: 192,
      height: 96,
      channels: 1,
    })
  })

  test('of a JPEG that is decoded at a fraction of its size lie off by less than one of their own pixels', async () => {
    // Neither side is a multiple of eight, and the line stands near the far edges.
    const [width, height] = [8003, 6001]
    const line = { create: { width: 200, height: 6001, channels: 3 as const, background: '#000' } }
    const drawLine = (path: string): Promise<unknown> =>
      sharp({ create: { width, height, channels: 3, background: '#fff' } })
        .composite([{ input: line, left: 7700, top: 0 }])
        .jpeg({ quality: 95 })
        .toFile(path)
    const { whole } = await made(drawLine, 'plan.jpg', 'whole')
    const { data, info } = await sharp(await whole('overview.jpg'))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true })
    let [ink, moment] = [0, 0]
    for (let x = 0; x < info.width; x++) {
      const dark = 255 - (data[Math.floor(info.height / 2) * info.width + x] ?? 255)
      ink += dark
      moment += dark * (x + 0.5)
    }
    const middle = 7800 * (info.width / width)
    expect(Math.abs(moment / ink - middle)).toBeLessThan(1)
  })
})

describe('a scan of any kind', () => {
  const flat = (channels: 3 | 4, background: Color) =>
    sharp({ create: { width: 600, height: 530, channels, background } })
  const sixteen = (path: string): Promise<unknown> => {
    const data = new Uint16Array(600 * 530).fill(40_000)
    return sharp(data, { raw: { width: 600, height: 530, channels: 1 } })
      .toColourspace('grey16')
      .png()
      .toFile(path)
  }
  const half = (path: string): Promise<unknown> => {
    const data = Buffer.alloc(600 * 530, 0)
    data.fill(255, 0, 300 * 600)
    return sharp(data, { raw: { width: 600, height: 530, channels: 1 } })
      .toColourspace('b-w')
      .tiff({ bitdepth: 1, compression: 'ccittfax4' })
      .toFile(path)
  }
  test.each<[what: string, name: string, draw: (path: string) => Promise<unknown>, colour: number[]]>([
    [
      'transparent, on white',
      'a.png',
      (path) => flat(4, { r: 0, g: 0, b: 0, alpha: 0 }).toFile(path),
      [255, 255, 255],
    ],
    [
      'half transparent, on white',
      'a.webp',
      (path) => flat(4, { r: 0, g: 0, b: 0, alpha: 0.5 }).webp({ lossless: true }).toFile(path),
      [127, 127, 127],
    ],
    [
      'in colour',
      'a.tif',
      (path) => flat(3, { r: 30, g: 60, b: 120 }).tiff({ compression: 'lzw' }).toFile(path),
      [30, 60, 120],
    ],
    ['in 16 bits of grey', 'a.png', sixteen, [156, 156, 156]],
    ['in one bit', 'a.tif', half, [255, 255, 255]],
    [
      'in a press’s four inks',
      'a.jpg',
      (path) => flat(3, { r: 250, g: 250, b: 250 }).toColourspace('cmyk').jpeg().toFile(path),
      [250, 250, 250],
    ],
  ])('%s, is shown in 8 bits of sRGB', async (_, name, draw, colour) => {
    const { whole, tile } = await made(draw, name)
    for (const bytes of [await whole('overview.jpg'), await tile(0, 0, 0)]) {
      const meta = await sharp(bytes).metadata()
      expect(meta.depth).toBe('uchar')
      expect(['srgb', 'b-w']).toContain(meta.space)
      const data = await sharp(bytes)
        .toColourspace('srgb')
        .extract({ left: 5, top: 5, width: 1, height: 1 })
        .raw()
        .toBuffer()
      const found = data.length === 1 ? [data[0], data[0], data[0]] : [...data]
      for (const [i, value] of colour.entries())
        expect(Math.abs((found[i] ?? 0) - value)).toBeLessThanOrEqual(4)
    }
  })

  test('that a camera asks to be turned is shown as its pixels are stored', async () => {
    const draw = (path: string): Promise<unknown> =>
      flat(3, '#ddd').withMetadata({ orientation: 6 }).toFile(path)
    const { whole } = await made(draw, 'photo.jpg', 'whole')
    expect(await sharp(await whole('overview.jpg')).metadata()).toMatchObject({
      width: 600,
      height: 530,
    })
  })
})
