import { mkdir, readdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../src/contract/limits.ts'
import { pageThumbnailAddress, pictureAddress } from '../../../src/contract/picture-addresses.ts'
import { TILE } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import type { Sheet } from '../../../src/core/job/model/types.ts'
import { pageFile } from '../../../src/main/services/scans/kept/page-file.ts'
import { readPage } from '../../../src/main/services/scans/reader/read-scan.ts'
import { type BenchWithScan, benchWithScan } from '../fixtures/bench-with-scan.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { isBar, waveringBars } from '../scans/kinds/ccitt/wavering-bars.ts'
import { PdfFile, pdfOf, real, reference } from '../scans/kinds/pdf/pdf-file.ts'
import { lockedPage, PASSWORD } from '../scans/kinds/pdf-locked-kinds.ts'
import { picture } from '../scans/kinds/picture.ts'

const DPI = 300
const points = (pixels: number): number => (pixels * 72) / DPI

/** A page that a scan in one bit covers, coded by Group 4. */
function faxPage(width: number, height: number): Buffer {
  const file = new PdfFile()
  const scan = file.stream(
    `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray /BitsPerComponent 1 ` +
      `/Filter /CCITTFaxDecode /DecodeParms << /K -1 /Columns ${width} /Rows ${height} >>`,
    waveringBars(width, height),
  )
  return pageOfScan(file, scan, width, height)
}

/** A file of one page that a picture of it covers. */
function pageOfScan(file: PdfFile, scan: number, width: number, height: number): Buffer {
  const [across, down] = [points(width), points(height)]
  return pdfOf(file, [
    {
      box: [0, 0, across, down],
      content: `q ${real(across)} 0 0 ${real(down)} 0 0 cm /Scan Do Q`,
      resources: `/XObject << /Scan ${reference(scan)} >>`,
    },
  ])
}

/** A page of lines, which gets its pixels by being drawn. */
const drawnPage = (): Buffer =>
  pdfOf(new PdfFile(), [
    { box: [0, 0, 216, 180], content: '2 w 20 20 m 190 160 l S 1 0 0 RG 20 160 m 190 20 l S' },
  ])

const onBench = (pdf: Buffer): Promise<BenchWithScan> =>
  benchWithScan((path) => writeFile(path, pdf), 'plan.pdf', {})

async function tile({ bench }: BenchWithScan, shown: SheetPictures, column: number, row: number) {
  const { sheet, version } = shown
  const found = await bench.picture(pictureAddress({ sheet, version, kind: 'tile', level: 0, column, row }))
  if (found === null) throw new Error(`no tile ${column}, ${row}`)
  return { ...found, pixels: sharp(Buffer.from(found.bytes)) }
}

const tileBox = ({ width, height }: SheetPictures, column: number, row: number) => ({
  left: column * TILE,
  top: row * TILE,
  width: Math.min(TILE, width - column * TILE),
  height: Math.min(TILE, height - row * TILE),
})

/** How many pixels of a tile are not those of the bars. */
async function wrongBars(
  bench: BenchWithScan,
  shown: SheetPictures,
  column: number,
  row: number,
): Promise<number> {
  const { pixels, type } = await tile(bench, shown, column, row)
  expect(type).toBe('image/png')
  const { left, top, width, height } = tileBox(shown, column, row)
  const { data, info } = await pixels.extractChannel(0).raw().toBuffer({ resolveWithObject: true })
  expect([info.width, info.height]).toEqual([width, height])
  let wrong = 0
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const black = isBar(left + x, top + y, shown.width)
      if (data[y * width + x] !== (black ? 0 : 255)) wrong++
    }
  }
  return wrong
}

const scanOf = async ({ ask }: BenchWithScan): Promise<Sheet['scan']> => {
  const scan = (await ask('look', {})).opened?.job.sheets[0]?.scan
  if (scan === undefined) throw new Error('no sheet')
  return scan
}

/** What is left below `.cache`: the tiles and the like of one page, and nothing that was half made. */
const cached = async ({ folder }: BenchWithScan): Promise<string[]> => {
  const [own = '', ...more] = await readdir(join(folder, '.cache'))
  expect(more).toEqual([])
  return (await readdir(join(folder, '.cache', own))).sort()
}
const ALL_MADE = ['ground.png', 'manifest.json', 'overview.jpg', 'thumbnail.jpg', 'tiles']

describe('the tiles of a page of a PDF', () => {
  test('that is a scan have its very pixels, and the file that it was taken into is gone', async () => {
    const bench = await onBench(faxPage(1300, 1100))
    await bench.open()
    const shown = await bench.shown()
    expect(shown).toMatchObject({ width: 1300, height: 1100, progress: { state: 'ready', exact: true } })
    for (const [column, row] of [
      [0, 0],
      [1, 1],
      [2, 2],
    ] as const)
      expect(await wrongBars(bench, shown, column, row)).toBe(0)
    expect(await cached(bench)).toEqual(ALL_MADE)
  })

  test('that is drawn show it as it is drawn at the dots per inch of the sheet', async () => {
    const bench = await onBench(drawnPage())
    await bench.open()
    const scan = await scanOf(bench)
    expect(scan).toMatchObject({ width: 1200, height: 1000, drawnAt: 400 })
    const shown = await bench.shown()
    expect(shown.progress.state).toBe('ready')
    const folder = join(await temporaryFolder(), 'drawn')
    await mkdir(folder)
    const signal = new AbortController().signal
    const drawn = await pageFile(join(bench.folder, 'scans', scan.file), scan, {
      folder,
      limits: LIMITS,
      signal,
    })
    for (const [column, row] of [
      [0, 0],
      [1, 1],
      [2, 1],
    ] as const) {
      const { pixels } = await tile(bench, shown, column, row)
      const own = await pixels.removeAlpha().raw().toBuffer()
      const theirs = await sharp(drawn.path)
        .extract(tileBox(shown, column, row))
        .removeAlpha()
        .raw()
        .toBuffer()
      expect(own.length).toBe(theirs.length)
      const off = own.reduce((sum, value, i) => sum + Math.abs(value - (theirs[i] ?? 0)), 0) / own.length
      // It is in colour, so that its tiles come near; ink is there to be compared.
      expect(off).toBeLessThan(0.5)
      expect(theirs.some((value) => value < 64)).toBe(true)
    }
    expect(await cached(bench)).toEqual(ALL_MADE)
  })

  test('that is locked wait for its password, and have its very pixels once it is unlocked', async () => {
    const grey = picture({ width: 700, height: 600, samples: 1, bits: 8 }, (x, y) => [(x * 7 + y * 13) % 256])
    const pdf = await lockedPage(grey, '1.7ext3')
    const bench = await benchWithScan((path) => writeFile(path, pdf), 'plan.pdf', {}, undefined, PASSWORD)
    await bench.open()
    const locked = await bench.shown()
    expect(locked.progress).toMatchObject({ state: 'failed', locked: true })
    expect(await bench.refused('unlock', { sheet: 'S1', password: 'brass' })).toContain('does not open')
    const ready = bench.progress(({ state }) => state === 'ready')
    const shown = await bench.ask('unlock', { sheet: 'S1', password: PASSWORD })
    expect((await ready).locked).toBeUndefined()
    for (const [column, row] of [
      [0, 0],
      [1, 1],
    ] as const) {
      const { pixels, type } = await tile(bench, shown, column, row)
      expect(type).toBe('image/png')
      const { left, top, width, height } = tileBox(shown, column, row)
      const data = await pixels.extractChannel(0).raw().toBuffer()
      const expected = Buffer.from(
        Array.from({ length: width * height }, (_, i) => {
          const [x, y] = [left + (i % width), top + Math.floor(i / width)]
          return (x * 7 + y * 13) % 256
        }),
      )
      expect(data.equals(expected)).toBe(true)
    }
    expect(await cached(bench)).toEqual(ALL_MADE)
  })

  test('that is a scan of 110 megapixels are right in its far corner, within the usual limits', async () => {
    const [width, height] = [12_000, 9_200]
    const bench = await onBench(faxPage(width, height))
    await bench.open()
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    const [level] = shown.levels
    expect([level?.width, level?.height]).toEqual([width, height])
    expect(await wrongBars(bench, shown, (level?.columns ?? 0) - 1, (level?.rows ?? 0) - 1)).toBe(0)
    await bench.ask('stop-pictures', { sheet: 'S1' })
    const upload = await bench.handOver(join(bench.folder, 'scans', 'plan.pdf'), 'plan.pdf')
    const small = await bench.bench.picture(pageThumbnailAddress({ upload, page: 1 }))
    const { width: across, height: down } = await sharp(Buffer.from(small?.bytes ?? [])).metadata()
    expect([across, down]).toEqual([240, 184])
  })

  test('that is a scan of 110 megapixels in grey are refused in a sentence where less memory is allowed', async () => {
    const [width, height] = [12_000, 9_200]
    const file = new PdfFile()
    const scan = file.stream(
      `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray /BitsPerComponent 8 ` +
        '/Filter /FlateDecode',
      deflateSync(Buffer.alloc(width * height, 200), { level: 1 }),
    )
    const pdf = pageOfScan(file, scan, width, height)
    const path = join(await temporaryFolder(), 'plan.pdf')
    await writeFile(path, pdf)
    const limits = { ...LIMITS, memory: 512 * 1024 ** 2 }
    await expect(readPage({ path, called: 'plan.pdf' }, 1, undefined, { limits })).rejects.toThrow(
      /^The scan plan\.pdf takes more than 512 MiB of memory to read: .+"memory" higher .+\.$/,
    )
  })
})
