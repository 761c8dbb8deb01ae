import { describe, expect, test } from 'vitest'
import { TAG } from '../../../../src/main/services/scans/tiff/fields.ts'
import { firstValue, readDirectories } from '../../../../src/main/services/scans/tiff/read-directories.ts'
import {
  HEADER,
  tiffDirectory,
  tiffHeader,
} from '../../../../src/main/services/scans/tiff/write-directory.ts'

const all = async (file: Buffer): Promise<[tag: number, count: number, first: number | undefined][][]> => {
  const found: [number, number, number | undefined][][] = []
  const bytesAt = async (at: number, length: number): Promise<Buffer> => {
    if (at + length > file.length) throw new RangeError('out of the file')
    return file.subarray(at, at + length)
  }
  for await (const fields of readDirectories(bytesAt)) {
    const page: [number, number, number | undefined][] = []
    for (const field of fields) page.push([field.tag, field.count, await firstValue(field)])
    found.push(page)
  }
  return found
}

/** A file that is nothing but directories: one after another, each with one fraction behind it. `MM`: big-endian */
function chained(order: 'II' | 'MM', ways: readonly number[]): Buffer {
  const file = Buffer.alloc(HEADER + ways.length * 32)
  const u16 = (value: number, at: number) =>
    order === 'II' ? file.writeUInt16LE(value, at) : file.writeUInt16BE(value, at)
  const u32 = (value: number, at: number) =>
    order === 'II' ? file.writeUInt32LE(value, at) : file.writeUInt32BE(value, at)
  file.write(order, 'latin1')
  u16(42, 2)
  u32(HEADER, 4)
  for (const [i, next] of ways.entries()) {
    const at = HEADER + 32 * i
    u16(1, at)
    u16(TAG.xResolution, at + 2)
    u16(5, at + 4)
    u32(1, at + 6)
    u32(at + 20, at + 10)
    u32(next < 0 ? 0 : HEADER + 32 * next, at + 14)
    u32(300 * (i + 1), at + 20)
    u32(2, at + 24)
  }
  return file
}

describe('directories of a TIFF file', () => {
  test('that are written are read back, lists in the fields and behind them', async () => {
    const fields = [
      { tag: TAG.width, type: 'long', values: [70_000] },
      { tag: TAG.bits, type: 'short', values: [8, 8, 8] },
      { tag: TAG.compression, type: 'short', values: [8] },
      { tag: TAG.stripBytes, type: 'long', values: [100_000, 2, 3] },
    ] as const
    const file = Buffer.concat([tiffHeader(HEADER), tiffDirectory(fields, HEADER)])
    const [page] = await all(file)
    expect(page?.map(([tag, count]) => [tag, count])).toEqual(
      fields.map(({ tag, values }) => [tag, values.length]),
    )
    expect([page?.[0]?.[2], page?.[2]?.[2]]).toEqual([70_000, 8])
    // Behind the directory: three numbers of 16 bits, then three of 32.
    const behind = file.subarray(HEADER + 2 + 12 * fields.length + 4)
    expect([0, 2, 4].map((at) => behind.readUInt16LE(at))).toEqual([8, 8, 8])
    expect([6, 10, 14].map((at) => behind.readUInt32LE(at))).toEqual([100_000, 2, 3])
  })

  test.each(['II', 'MM'] as const)(
    'are followed one after another, in either order of bytes: %s',
    async (order) => {
      expect(await all(chained(order, [1, 2, -1]))).toEqual(
        [150, 300, 450].map((dpi) => [[TAG.xResolution, 1, dpi]]),
      )
    },
  )

  test('that run in a ring are each read once', async () => {
    expect(await all(chained('II', [1, 0]))).toHaveLength(2)
  })

  test('that point out of the file are an error, and so is one with more fields than any has', async () => {
    await expect(all(chained('II', [9]))).rejects.toThrow(RangeError)
    const greedy = chained('II', [-1])
    greedy.writeUInt16LE(5000, HEADER)
    await expect(all(greedy)).rejects.toThrow('too many entries')
  })
})
