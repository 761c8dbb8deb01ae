import { createReadStream } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'

/** A stream of a PDF as it stands in the file: packed, and locked where the file is. */
export interface StreamInFile {
  dictionary: string
  /** Where its bytes begin. */
  at: number
  /** Bytes, as its dictionary says; undefined when that says it elsewhere. */
  length: number | undefined
  /** Whether the file ends before the stream does. */
  cut: boolean
  /** All bytes; undefined when it can't be told how many, or they are not all there. */
  read: () => Promise<Buffer | undefined>
}

const OBJECT = /^(\d+)R(\d*)$/
const LONGEST_DICTIONARY = 4096
const LENGTH = /\/Length\s+(\d+)(?!\d*\s+\d+\s+R)/
const END = 'endstream'

/**
 * Finds a stream of a PDF by its number.
 * @param object as `LibraryPicture` has it
 * @returns undefined when there is none that is plain to see
 * Source: ISO 32000-1, 7.3.8 and 7.3.10.
 */
export async function streamInFile(path: string, object: string): Promise<StreamInFile | undefined> {
  const [, number, generation] = OBJECT.exec(object) ?? []
  if (number === undefined) return undefined
  const file = await open(path)
  try {
    const start = await lastPlaceOf(file, `${number} ${generation === '' ? 0 : generation} obj`)
    if (start === undefined) return undefined
    const { buffer, bytesRead } = await file.read(
      Buffer.alloc(LONGEST_DICTIONARY),
      0,
      LONGEST_DICTIONARY,
      start,
    )
    const head = buffer.toString('latin1', 0, bytesRead)
    const [, dictionary, begin] = /^(.*?>>\s*)(stream\r?\n)/s.exec(head) ?? []
    if (dictionary === undefined || begin === undefined) return undefined
    const at = start + dictionary.length + begin.length
    const stated = LENGTH.exec(dictionary)?.[1]
    const length = stated === undefined ? undefined : Number(stated)
    const { size } = await file.stat()
    const cut = length === undefined || at + length + END.length > size ? !(await endsAfter(path, at)) : false
    return { dictionary, at, length, cut, read: () => bytesOf(path, at, length, size) }
  } finally {
    await file.close()
  }
}

async function bytesOf(
  path: string,
  at: number,
  length: number | undefined,
  size: number,
): Promise<Buffer | undefined> {
  if (length === undefined || length <= 0 || at + length > size) return undefined
  const file = await open(path)
  try {
    return (await file.read(Buffer.alloc(length), 0, length, at)).buffer
  } finally {
    await file.close()
  }
}

/** Whether a stream that begins here has an end. */
async function endsAfter(path: string, at: number): Promise<boolean> {
  let before = ''
  for await (const chunk of createReadStream(path, { start: at })) {
    const text = before + (chunk as Buffer).toString('latin1')
    if (text.includes(END)) return true
    before = text.slice(-END.length)
  }
  return false
}

const CHUNK = 4 * 1024 * 1024

/** Where an object of this name begins; the last one holds where a file was changed by adding to it. */
async function lastPlaceOf(file: FileHandle, name: string): Promise<number | undefined> {
  let end = (await file.stat()).size
  const reach = name.length + 1
  while (end > 0) {
    const start = Math.max(0, end - CHUNK)
    const { buffer, bytesRead } = await file.read(
      Buffer.alloc(end - start + reach),
      0,
      end - start + reach,
      start,
    )
    const text = buffer.subarray(0, bytesRead)
    for (let at = text.lastIndexOf(name); at >= 0; at = at === 0 ? -1 : text.lastIndexOf(name, at - 1)) {
      const before = at === 0 ? 0x0a : (text[at - 1] ?? 0x0a)
      // Another object's number may end with this one.
      if (before < 0x30 || before > 0x39) return start + at
    }
    end = start
  }
  return undefined
}
