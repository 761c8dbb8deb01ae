import { createReadStream } from 'node:fs'
import { Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createInflate } from 'node:zlib'
import { streamInFile } from '../file/stream-in-file.ts'
import type { LibraryPicture } from '../pixels/library-picture.ts'
import { faxIsWhole } from './fax-is-whole.ts'
import { jbig2IsWhole } from './jbig2-is-whole.ts'

const FLATE = /\/Filter\s*(?:\[\s*)?\/FlateDecode\s*\]?\s*(?=\/|>>)/

/** The only filter of a stream, and what is said of it; as they stand in its dictionary, unless in an object of its own. */
const FAX = /\/Filter\s*(?:\[\s*)?\/CCITTFaxDecode\s*\]?\s*(?=\/|>>)/
const JBIG2 = /\/Filter\s*(?:\[\s*)?\/JBIG2Decode\s*\]?\s*(?=\/|>>)/
const GROUP_4 = /\/K\s+-\d/
const COLUMNS = /\/Columns\s+(\d+)/
const ROWS_AT_BYTES = /\/EncodedByteAlign\s+true/

/**
 * Whether all of a picture stands in the file, as far as can be told from outside: the library of PDF makes do with
 * what is left of one that was cut short.
 * @param picture one that stands in the page itself is not looked at
 * @param locked whether the file is: then what is packed in it can't be seen
 */
export async function isWhole(
  path: string,
  { object, pixels }: Pick<LibraryPicture, 'object' | 'pixels'>,
  locked: boolean,
): Promise<boolean> {
  if (object === undefined) return true
  const stream = await streamInFile(path, object)
  if (stream === undefined) return true
  if (stream.cut) return false
  if (locked || stream.length === undefined || stream.length === 0) return true
  const { dictionary } = stream
  if (FLATE.test(dictionary)) return inflates(path, stream.at, stream.length)
  if (JBIG2.test(dictionary)) return jbig2IsWhole((await stream.read()) ?? Buffer.alloc(0))
  if (isPlainGroup4(dictionary, pixels.width))
    return faxIsWhole((await stream.read()) ?? Buffer.alloc(0), pixels)
  return true
}

/** Whether it is coded as TIFF has it as well. ISO 32000-1, table 11. */
const isPlainGroup4 = (dictionary: string, width: number): boolean =>
  FAX.test(dictionary) &&
  GROUP_4.test(dictionary) &&
  Number(COLUMNS.exec(dictionary)?.[1]) === width &&
  !ROWS_AT_BYTES.test(dictionary)

async function inflates(path: string, at: number, length: number): Promise<boolean> {
  try {
    const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() })
    await pipeline(createReadStream(path, { start: at, end: at + length - 1 }), createInflate(), nowhere)
    return true
  } catch {
    return false
  }
}
