import { inflateSync } from 'node:zlib'

/**
 * Which characters a fount has shapes for: its character map, as the Web Open Font Format 1.0 (W3C, 2012) packs it and
 * format 4 of the OpenType `cmap` table writes it.
 */
export function fountGlyphs(woff: Buffer): ReadonlySet<number> {
  const cmap = tableOf(woff, 'cmap')
  const has = new Set<number>()
  const tables = cmap.readUInt16BE(2)
  for (let i = 0; i < tables; i++) {
    const at = cmap.readUInt32BE(4 + 8 * i + 4)
    if (cmap.readUInt16BE(at) === 4) addSegments(cmap.subarray(at), has)
  }
  return has
}

function tableOf(woff: Buffer, tag: string): Buffer {
  const tables = woff.readUInt16BE(12)
  for (let i = 0; i < tables; i++) {
    const entry = 44 + 20 * i
    if (woff.toString('latin1', entry, entry + 4) !== tag) continue
    const [offset, packed, full] = [4, 8, 12].map((field) => woff.readUInt32BE(entry + field))
    const bytes = woff.subarray(offset, (offset ?? 0) + (packed ?? 0))
    return packed === full ? bytes : inflateSync(bytes)
  }
  throw new Error(`The fount has no table "${tag}".`)
}

function addSegments(table: Buffer, has: Set<number>): void {
  const doubled = table.readUInt16BE(6)
  for (let i = 0; i < doubled; i += 2) {
    const end = table.readUInt16BE(14 + i)
    const start = table.readUInt16BE(16 + doubled + i)
    const delta = table.readUInt16BE(16 + 2 * doubled + i)
    const rangeAt = 16 + 3 * doubled + i
    const range = table.readUInt16BE(rangeAt)
    for (let code = start; code <= end && code !== 0xffff; code++) {
      const listed = range === 0 ? code : table.readUInt16BE(rangeAt + range + 2 * (code - start))
      if (listed !== 0 && ((range === 0 ? code + delta : listed) & 0xffff) !== 0) has.add(code)
    }
  }
}
