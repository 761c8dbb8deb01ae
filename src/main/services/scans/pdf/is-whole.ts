import { createReadStream } from 'node:fs'
import { Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createInflate } from 'node:zlib'
import { streamInFile } from './stream-in-file.ts'

const FLATE = /\/Filter\s*(?:\[\s*)?\/FlateDecode\s*\]?\s*(?=\/|>>)/

/**
 * Whether all of a picture stands in the file, as far as can be told from outside: the library of PDF makes do with
 * what is left of one that was cut short.
 * @param object as `LibraryPicture` has it; one that stands in the page itself is not looked at
 * @param locked whether the file is: then what is packed in it can't be seen
 */
export async function isWhole(path: string, object: string | undefined, locked: boolean): Promise<boolean> {
  if (object === undefined) return true
  const stream = await streamInFile(path, object)
  if (stream === undefined) return true
  if (stream.cut) return false
  const { dictionary, at, length } = stream
  if (locked || length === undefined || length === 0 || !FLATE.test(dictionary)) return true
  try {
    const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() })
    await pipeline(createReadStream(path, { start: at, end: at + length - 1 }), createInflate(), nowhere)
    return true
  } catch {
    return false
  }
}
