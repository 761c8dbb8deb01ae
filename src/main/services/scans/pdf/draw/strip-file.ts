import { type FileHandle, open } from 'node:fs/promises'
import { promisify } from 'node:util'
import { deflate, inflate } from 'node:zlib'
import { ServiceError } from '../../../service-error.ts'
import { type Pixels, rowBytes } from '../pixels/pixels.ts'

const pack = promisify(deflate)
const unpack = promisify(inflate)

type Shape = Omit<Pixels, 'data'>

const ROWS = 64
const EFFORT = 1
const HEADER = 8
/** Offsets in such a file have 32 bits. */
const LARGEST = 2 ** 32 - 1
const SHORT = 3
const LONG = 4
const DEFLATE = 8

/**
 * A TIFF file that is written row by row, in strips compressed without loss, so that little is held in memory.
 * Source: TIFF 6.0, sections 2, 4 and 6; compression 8: Adobe Photoshop TIFF Technical Notes, 2002.
 */
export class StripFile {
  readonly #file: FileHandle
  readonly #shape: Shape
  readonly #strips: { at: number; length: number }[] = []
  #rest = Buffer.alloc(0)
  #at = HEADER

  private constructor(file: FileHandle, shape: Shape) {
    this.#file = file
    this.#shape = shape
  }

  /** Begins a file that must not be there yet. */
  static async create(path: string, shape: Shape): Promise<StripFile> {
    return new StripFile(await open(path, 'wx+'), shape)
  }

  /** Writes whole rows. */
  async append(rows: Uint8Array): Promise<void> {
    const strip = rowBytes(this.#shape) * ROWS
    let bytes =
      this.#rest.length === 0
        ? Buffer.from(rows.buffer, rows.byteOffset, rows.length)
        : Buffer.concat([this.#rest, rows])
    for (; bytes.length >= strip; bytes = bytes.subarray(strip)) await this.#put(bytes.subarray(0, strip))
    this.#rest = Buffer.from(bytes)
  }

  /** Reads back what was written, strip after strip, once all rows are. */
  async *strips(): AsyncGenerator<Buffer> {
    for (const { at, length } of this.#strips) {
      const { buffer } = await this.#file.read(Buffer.alloc(length), 0, length, at)
      yield await unpack(buffer)
    }
  }

  /** Writes what says what the file is. */
  async finish(): Promise<void> {
    if (this.#rest.length > 0) await this.#put(this.#rest)
    this.#rest = Buffer.alloc(0)
    const directory = this.#directory()
    await this.#file.write(directory, 0, directory.length, this.#at)
    const header = Buffer.from('II*\0\0\0\0\0', 'latin1')
    header.writeUInt32LE(this.#at, 4)
    await this.#file.write(header, 0, HEADER, 0)
  }

  async close(): Promise<void> {
    await this.#file.close()
  }

  async #put(strip: Buffer): Promise<void> {
    const bytes = await pack(strip, { level: EFFORT })
    if (this.#at + bytes.length + 16 * (this.#strips.length + 64) > LARGEST) {
      throw new ServiceError(
        'The page is too large for the file that it is drawn into: draw it with fewer dots to the inch.',
      )
    }
    await this.#file.write(bytes, 0, bytes.length, this.#at)
    this.#strips.push({ at: this.#at, length: bytes.length })
    this.#at += bytes.length + (bytes.length % 2)
  }

  #directory(): Buffer {
    const { width, height, samples, bits } = this.#shape
    const lists: Buffer[] = []
    const entries: [tag: number, type: number, count: number, value: number][] = [
      [256, LONG, 1, width],
      [257, LONG, 1, height],
      [258, SHORT, samples, bits],
      [259, SHORT, 1, DEFLATE],
      [262, SHORT, 1, samples === 3 ? 2 : 1],
      [273, LONG, this.#strips.length, 0],
      [277, SHORT, 1, samples],
      [278, LONG, 1, ROWS],
      [279, LONG, this.#strips.length, 0],
      [284, SHORT, 1, 1],
    ]
    let listAt = this.#at + 2 + 12 * entries.length + 4
    const listed = (list: Buffer): number => {
      lists.push(list)
      const at = listAt
      listAt += list.length
      return at
    }
    const directory = Buffer.alloc(2 + 12 * entries.length + 4)
    directory.writeUInt16LE(entries.length, 0)
    for (const [i, [tag, type, count, value]] of entries.entries()) {
      const at = 2 + 12 * i
      directory.writeUInt16LE(tag, at)
      directory.writeUInt16LE(type, at + 2)
      directory.writeUInt32LE(count, at + 4)
      if (tag === 258 && samples === 3) directory.writeUInt32LE(listed(shorts([bits, bits, bits])), at + 8)
      else if (tag === 273)
        writeLongs(
          directory,
          at + 8,
          this.#strips.map((one) => one.at),
          listed,
        )
      else if (tag === 279)
        writeLongs(
          directory,
          at + 8,
          this.#strips.map((one) => one.length),
          listed,
        )
      else directory.writeUInt32LE(value, at + 8)
    }
    return Buffer.concat([directory, ...lists])
  }
}

/** A list of one stands in the entry itself. */
function writeLongs(
  directory: Buffer,
  at: number,
  values: readonly number[],
  listed: (list: Buffer) => number,
): void {
  const [only] = values
  directory.writeUInt32LE(values.length === 1 && only !== undefined ? only : listed(longs(values)), at)
}

function shorts(values: readonly number[]): Buffer {
  const list = Buffer.alloc(2 * values.length)
  for (const [i, value] of values.entries()) list.writeUInt16LE(value, 2 * i)
  return list
}

function longs(values: readonly number[]): Buffer {
  const list = Buffer.alloc(4 * values.length)
  for (const [i, value] of values.entries()) list.writeUInt32LE(value, 4 * i)
  return list
}
