import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { pipeline } from 'node:stream/promises'

/** Bytes that are read at once: with fewer, going to and fro takes longer than the hashing. */
const CHUNK = 1 << 20

/** SHA-256 of a file's bytes, lower-case hexadecimal; read as a stream, so that size does not matter. */
export async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(createReadStream(path, { highWaterMark: CHUNK }), hash)
  return hash.digest('hex')
}
