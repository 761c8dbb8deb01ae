import { mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import sharp, { type Sharp } from 'sharp'
import { describe, expect, test } from 'vitest'
import { pyramidLevels, TILE } from '../../../../src/contract/picture-pyramid.ts'
import { blockAbout } from '../../../../src/main/services/pictures/layout/block.ts'
import { tileFile } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import { cutBlock, cutTiles } from '../../../../src/main/services/pictures/pyramid/cut-tiles.ts'
import { lookAtPage } from '../../../../src/main/services/pictures/pyramid/open-page.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const WIDTH = 1300
const HEIGHT = 1601

/** A grey profile by which every value but black and white means another: its curve is y = x³. ICC.1:2010 (v2 form). */
function greyProfile(): Buffer {
  const profile = Buffer.alloc(128 + 4 + 3 * 12 + 20 + 16 + 40)
  const text = (at: number, words: string): number => profile.write(words, at, 'latin1')
  profile.writeUInt32BE(profile.length, 0)
  profile.writeUInt32BE(0x02400000, 8)
  for (const [at, words] of [
    [12, 'scnr'],
    [16, 'GRAY'],
    [20, 'XYZ '],
    [36, 'acsp'],
  ] as const)
    text(at, words)
  /** D50, as s15Fixed16. */
  const white = [0xf6d6, 0x10000, 0xd32d]
  white.forEach((value, i) => {
    profile.writeUInt32BE(value, 68 + 4 * i)
  })
  profile.writeUInt32BE(3, 128)
  const [wtpt, kTRC, desc] = [168, 188, 204]
  for (const [i, [name, at, size]] of (
    [
      ['wtpt', wtpt, 20],
      ['kTRC', kTRC, 14],
      ['desc', desc, 40],
    ] as const
  ).entries()) {
    text(132 + 12 * i, name)
    profile.writeUInt32BE(at, 136 + 12 * i)
    profile.writeUInt32BE(size, 140 + 12 * i)
  }
  text(wtpt, 'XYZ ')
  white.forEach((value, i) => {
    profile.writeUInt32BE(value, wtpt + 8 + 4 * i)
  })
  text(kTRC, 'curv')
  profile.writeUInt32BE(1, kTRC + 8)
  profile.writeUInt16BE(3 * 256, kTRC + 12)
  text(desc, 'desc')
  profile.writeUInt32BE(5, desc + 8)
  text(desc + 12, 'cube')
  return profile
}

/** CRC-32 as PNG has it. PNG (ISO/IEC 15948:2004), annex D. */
function crc32(bytes: Buffer): number {
  let sum = 0xffffffff
  for (const byte of bytes) {
    sum ^= byte
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1
  }
  return (sum ^ 0xffffffff) >>> 0
}

/** A PNG with a profile put into it. PNG (ISO/IEC 15948:2004), 5.3 and 11.3.3.3. */
function withProfile(png: Buffer, profile: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from('iCCPcube\0\0', 'latin1'), deflateSync(profile)])
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(body.length - 4)
  check.writeUInt32BE(crc32(body))
  const afterHeader = 8 + 25
  return Buffer.concat([png.subarray(0, afterHeader), length, body, check, png.subarray(afterHeader)])
}

/** Noise, so that no value can be guessed from its neighbours. Numerical Recipes' quick generator. */
function noise(length: number): Uint8Array {
  let state = 5
  return Uint8Array.from({ length }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state >>> 24
  })
}

const NOISE = noise(WIDTH * HEIGHT)
const COLOURS = noise(WIDTH * HEIGHT * 3)

const raw = (channels: 1 | 3) => ({ raw: { width: WIDTH, height: HEIGHT, channels } })
const grey = (): Sharp => sharp(NOISE, raw(1)).toColourspace('b-w')
const colour = (): Sharp => sharp(COLOURS, raw(3)).blur(3)
const bits = (): Sharp =>
  sharp(
    NOISE.map((value) => (value < 128 ? 0 : 255)),
    raw(1),
  ).toColourspace('b-w')
const deep = (): Sharp =>
  sharp(
    Uint16Array.from(NOISE, (value, i) => 256 * value + (i % 256)),
    raw(1),
  ).toColourspace('grey16')

async function cutScan(scan: Sharp | Buffer, name: string) {
  const folder = await temporaryFolder()
  const path = join(folder, name)
  if (Buffer.isBuffer(scan)) await writeFile(path, scan)
  else await scan.toFile(path)
  const file = { path, page: 1 }
  const { kind, size } = await lookAtPage(file)
  expect(size).toEqual({ width: WIDTH, height: HEIGHT })
  const wanted = { file, kind, levels: pyramidLevels(WIDTH, HEIGHT), folder: join(folder, 'tiles') }
  await mkdir(wanted.folder)
  await cutTiles(wanted, () => undefined)
  return { ...wanted, below: folder }
}

describe('the tiles of full size have the very values of a scan', () => {
  test.each<[what: string, name: string, scan: () => Sharp]>([
    ['in grey, LZW', 'a.tif', () => grey().tiff({ compression: 'lzw' })],
    ['in grey, tiled, Deflate', 'a.tif', () => grey().tiff({ compression: 'deflate', tile: true })],
    ['in grey, PNG', 'a.png', () => grey().png()],
    ['in grey, JPEG, as it decodes', 'a.jpg', () => grey().jpeg({ quality: 70 })],
    ['in one bit, CCITT group 4', 'a.tif', () => bits().tiff({ bitdepth: 1, compression: 'ccittfax4' })],
    [
      'in one bit that is white where there is nothing',
      'a.tif',
      () => bits().tiff({ bitdepth: 1, compression: 'ccittfax4', miniswhite: true }),
    ],
  ])('%s', async (_, name, scan) => {
    const { file, kind, levels, folder } = await cutScan(scan(), name)
    expect(kind).toEqual({ type: 'png', exact: true })
    const stored = await sharp(file.path, { ignoreIcc: true }).toColourspace('b-w').raw().toBuffer()
    const [level] = levels
    for (let row = 0; row < (level?.rows ?? 0); row++) {
      for (let column = 0; column < (level?.columns ?? 0); column++) {
        const tile = sharp(join(folder, tileFile({ level: 0, column, row }, 'png')))
        const { data, info } = await tile.toColourspace('b-w').raw().toBuffer({ resolveWithObject: true })
        const [left, top] = [column * TILE, row * TILE]
        const whole = {
          width: Math.min(TILE, WIDTH - left),
          height: Math.min(TILE, HEIGHT - top),
          channels: 1,
        }
        expect(info).toMatchObject(whole)
        for (let y = 0; y < info.height; y++) {
          const start = (top + y) * WIDTH + left
          const mine = data.subarray(y * info.width, (y + 1) * info.width)
          if (!mine.equals(stored.subarray(start, start + info.width)))
            throw new Error(`Tile ${column}, ${row} differs in its row ${y}.`)
        }
      }
    }
  })

  test('in grey that has a profile: they are the stored ones, not those that the profile makes of them', async () => {
    const png = withProfile(await grey().png().toBuffer(), greyProfile())
    const made = await sharp(png).toColourspace('b-w').raw().toBuffer()
    const values = NOISE
    // The library would take the profile into account.
    expect(made.equals(values)).toBe(false)
    const { kind, folder } = await cutScan(png, 'a.png')
    expect(kind).toEqual({ type: 'png', exact: true })
    const { data, info } = await sharp(join(folder, '0', '1_2.png'))
      .toColourspace('b-w')
      .raw()
      .toBuffer({ resolveWithObject: true })
    for (let y = 0; y < info.height; y++) {
      const start = (2 * TILE + y) * WIDTH + TILE
      const row = data.subarray(y * info.width, (y + 1) * info.width)
      expect(row.equals(values.subarray(start, start + info.width))).toBe(true)
    }
  })

  test('but not of one in 16 bits, which is brought down to 8: the lower eight are left off', async () => {
    const { kind, folder } = await cutScan(deep().tiff({ compression: 'lzw' }), 'a.tif')
    expect(kind).toEqual({ type: 'png', exact: false })
    const { data, info } = await sharp(join(folder, '0', '0_0.png'))
      .raw()
      .toBuffer({ resolveWithObject: true })
    const values = NOISE
    for (let y = 0; y < info.height; y += 7) {
      for (let x = 0; x < info.width; x += 5) {
        expect(data[(y * info.width + x) * info.channels]).toBe(values[y * WIDTH + x])
      }
    }
  })

  test('nor of one in colour, which is kept as JPEG with all its colour', async () => {
    const { kind, folder } = await cutScan(colour().png(), 'a.png')
    expect(kind).toEqual({ type: 'jpeg', exact: false })
    const tile = await sharp(join(folder, '0', '1_1.jpeg')).metadata()
    expect([tile.format, tile.chromaSubsampling]).toEqual(['jpeg', '4:4:4'])
  })
})

const pixelsOf = (picture: Buffer): Promise<Buffer> => sharp(picture).raw().toBuffer()

describe('a tile that is made out of turn', () => {
  test.each<[what: string, name: string, scan: () => Sharp]>([
    ['of a grey scan', 'a.tif', () => grey().tiff({ compression: 'lzw' })],
    ['of a tiled scan', 'a.tif', () => grey().tiff({ compression: 'lzw', tile: true })],
    ['of a one-bit scan', 'a.tif', () => bits().tiff({ bitdepth: 1, compression: 'ccittfax4' })],
    ['of a scan in colour', 'a.jpg', () => colour().jpeg({ quality: 90 })],
  ])(
    '%s is the one that comes in its turn, pixel for pixel, and so are those round it',
    async (_, name, scan) => {
      const whole = await cutScan(scan(), name)
      let compared = 0
      for (const { level, columns, rows } of whole.levels) {
        for (const [column, row] of [
          [0, 0],
          [columns - 1, rows - 1],
          [columns - 1, 0],
          [Math.floor(columns / 2), Math.floor(rows / 2)],
        ] as const) {
          const place = { level, column, row }
          const found = whole.levels[level]
          if (found === undefined) throw new Error('no such level')
          const folder = await mkdtemp(join(whole.below, 'block-'))
          const files = await cutBlock({ ...whole, folder, block: blockAbout(place, found) })
          expect(files).toContain(tileFile(place, whole.kind.type))
          for (const file of files) {
            const [early, due] = [
              await readFile(join(folder, file)),
              await readFile(join(whole.folder, file)),
            ]
            const same = early.equals(due) || (await pixelsOf(early)).equals(await pixelsOf(due))
            expect(same, `${file} beside ${level}/${column}_${row}`).toBe(true)
            compared += 1
          }
        }
      }
      expect(compared).toBeGreaterThan(12)
    },
  )
})
