import { TYPE } from './fields.ts'

/** A field to be written: its number, and its values. */
export interface WrittenField {
  tag: number
  type: 'short' | 'long'
  values: readonly number[]
}

/** Bytes of a file before anything else in it. */
export const HEADER = 8

const ENTRY = 12

/** The beginning of a file whose only directory is here. */
export function tiffHeader(directoryAt: number): Buffer {
  const header = Buffer.alloc(HEADER)
  header.write('II*\0', 'latin1')
  header.writeUInt32LE(directoryAt, 4)
  return header
}

/**
 * The only directory of a file, with the lists that its fields have no room for after it.
 * @param fields by rising number, as readers want them
 * @param at where it will lie, an even number
 * Source: TIFF 6.0, section 2.
 */
export function tiffDirectory(fields: readonly WrittenField[], at: number): Buffer {
  const directory = Buffer.alloc(2 + ENTRY * fields.length + 4)
  const lists: Buffer[] = []
  let listAt = at + directory.length
  directory.writeUInt16LE(fields.length, 0)
  for (const [i, { tag, type, values }] of fields.entries()) {
    const entry = 2 + ENTRY * i
    directory.writeUInt16LE(tag, entry)
    directory.writeUInt16LE(TYPE[type], entry + 2)
    directory.writeUInt32LE(values.length, entry + 4)
    const list = listOf(type, values)
    if (list.length <= 4) list.copy(directory, entry + 8)
    else {
      directory.writeUInt32LE(listAt, entry + 8)
      lists.push(list)
      listAt += list.length
    }
  }
  return Buffer.concat([directory, ...lists])
}

function listOf(type: WrittenField['type'], values: readonly number[]): Buffer {
  const size = type === 'short' ? 2 : 4
  const list = Buffer.alloc(size * values.length)
  for (const [i, value] of values.entries()) {
    if (type === 'short') list.writeUInt16LE(value, size * i)
    else list.writeUInt32LE(value, size * i)
  }
  return list
}
