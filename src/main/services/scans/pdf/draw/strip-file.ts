import { type FileHandle, open } from 'node:fs/promises'
import { promisify } from 'node:util'
import { deflate, inflate } from 'node:zlib'
import { ServiceError } from '../../../service-error.ts'
import { reason } from '../../../words/services-words.ts'
import { TAG } from '../../tiff/fields.ts'
import { HEADER, tiffDirectory, tiffHeader } from '../../tiff/write-directory.ts'
import { type Pixels, rowBytes } from '../pixels/pixels.ts'

const pack = promisify(deflate)
const unpack = promisify(inflate)

type Shape = Omit<Pixels, 'data'>

const ROWS = 64
const EFFORT = 1
/** Offsets in such a file have 32 bits. */
const LARGEST = 2 ** 32 - 1
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
    await this.#file.write(tiffHeader(this.#at), 0, HEADER, 0)
  }

  async close(): Promise<void> {
    await this.#file.close()
  }

  async #put(strip: Buffer): Promise<void> {
    const bytes = await pack(strip, { level: EFFORT })
    if (this.#at + bytes.length + 16 * (this.#strips.length + 64) > LARGEST) {
      throw new ServiceError(reason('pdf.drawing-too-large'))
    }
    await this.#file.write(bytes, 0, bytes.length, this.#at)
    this.#strips.push({ at: this.#at, length: bytes.length })
    this.#at += bytes.length + (bytes.length % 2)
  }

  #directory(): Buffer {
    const { width, height, samples, bits } = this.#shape
    return tiffDirectory(
      [
        { tag: TAG.width, type: 'long', values: [width] },
        { tag: TAG.height, type: 'long', values: [height] },
        { tag: TAG.bits, type: 'short', values: Array.from({ length: samples }, () => bits) },
        { tag: TAG.compression, type: 'short', values: [DEFLATE] },
        { tag: TAG.photometric, type: 'short', values: [samples === 3 ? 2 : 1] },
        { tag: TAG.stripOffsets, type: 'long', values: this.#strips.map(({ at }) => at) },
        { tag: TAG.samples, type: 'short', values: [samples] },
        { tag: TAG.rowsPerStrip, type: 'long', values: [ROWS] },
        { tag: TAG.stripBytes, type: 'long', values: this.#strips.map(({ length }) => length) },
        { tag: TAG.planar, type: 'short', values: [1] },
      ],
      this.#at,
    )
  }
}
