import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { jpegDensity } from '../../../src/main/services/scans/raster/jpeg-density.ts'

const picture = () => sharp({ create: { width: 60, height: 40, channels: 3, background: '#eee' } })

/** The JPEG with a JFIF header: unit 1 is dots per inch, unit 0 an aspect ratio only. */
function withJfif(jpeg: Buffer, unit: number, density: number): Buffer {
  const header = Buffer.from([
    0xff,
    0xe0,
    0,
    16,
    ...Buffer.from('JFIF\0', 'latin1'),
    1,
    2,
    unit,
    0,
    0,
    0,
    0,
    0,
    0,
  ])
  header.writeUInt16BE(density, 12)
  header.writeUInt16BE(density, 14)
  return Buffer.concat([jpeg.subarray(0, 2), header, jpeg.subarray(2)])
}

const dpiOf = async (jpeg: Buffer): Promise<number | undefined> => {
  const density = await jpegDensity(jpeg)
  if (density !== undefined) expect(density.y).toBe(density.x)
  return density?.x
}

describe('the resolution of a JPEG scan', () => {
  test('is read from its JFIF header, 72 dpi too when it is stated', async () => {
    const jpeg = await picture().jpeg().toBuffer()
    expect(await dpiOf(withJfif(jpeg, 1, 300))).toBe(300)
    expect(await dpiOf(withJfif(jpeg, 1, 72))).toBe(72)
  })

  test('is read from its Exif tags', async () => {
    const jpeg = await picture().withMetadata({ density: 400 }).jpeg().toBuffer()
    expect(jpeg.includes('Exif\0\0')).toBe(true)
    expect(await dpiOf(jpeg)).toBe(400)
  })

  test('is not known where the file states none', async () => {
    const jpeg = await picture().jpeg().toBuffer()
    expect(jpeg.includes('JFIF') || jpeg.includes('Exif')).toBe(false)
    expect(await dpiOf(jpeg)).toBeUndefined()
    expect(await dpiOf(withJfif(jpeg, 0, 1))).toBeUndefined()
  })
})
