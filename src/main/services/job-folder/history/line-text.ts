import { createHash } from 'node:crypto'
import type { KeptLine, LineRef } from './kept-line.ts'

/** SHA-256, lower-case hexadecimal. */
export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex')

const HASH = /,"hash":"([0-9a-f]{64})"\}$/
const TAIL_BYTES = ',"hash":""}'.length + 64
const LENGTH_BYTES = ',"length":'.length
const CARRIAGE_RETURN = 0x0d

/** How many bytes a line has with its own length in it, and its newline. */
function wholeLength(bytesBefore: number): number {
  const rest = bytesBefore + LENGTH_BYTES + TAIL_BYTES + 1
  for (let digits = 1; ; digits++) {
    if (String(rest + digits).length === digits) return rest + digits
  }
}

/**
 * The text of a line, with its length and its hash at the end: the SHA-256 of all that stands before the hash.
 * Whoever reads it can tell a whole line from a torn one without the lines around it.
 */
export function writeLine(line: object): { text: string; hash: string } {
  const fields = JSON.stringify(line).slice(0, -1)
  const counted = `${fields},"length":${wholeLength(Buffer.byteLength(fields))}`
  const hash = sha256(counted)
  return { text: `${counted},"hash":"${hash}"}\n`, hash }
}

/** The hash that a line says it has, which need not be so; undefined where it says none. */
export const hashAtEnd = (bytes: Buffer): string | undefined =>
  HASH.exec(
    bytes
      .subarray(-TAIL_BYTES - 1)
      .toString('latin1')
      .trimEnd(),
  )?.[1]

/** The line in some bytes, without their newline; undefined where it is not whole. */
export function readLine(given: Buffer): { line: KeptLine; hash: string } | undefined {
  // Whoever turns line ends into those of another system has not torn the line.
  const bytes = given.at(-1) === CARRIAGE_RETURN ? given.subarray(0, -1) : given
  if (bytes.length <= TAIL_BYTES) return undefined
  const hash = HASH.exec(bytes.subarray(-TAIL_BYTES).toString('latin1'))?.[1]
  const counted = bytes.subarray(0, -TAIL_BYTES)
  if (hash === undefined || sha256(counted) !== hash) return undefined
  let json: unknown
  try {
    json = JSON.parse(bytes.toString('utf8'))
  } catch {
    return undefined
  }
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return undefined
  const fields = json as Record<string, unknown>
  if (fields['length'] !== bytes.length + 1) return undefined
  const line = lineOf(fields)
  return line && { line, hash }
}

const isText = (value: unknown): value is string => typeof value === 'string'
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0

function refOf(value: unknown): LineRef | null {
  if (!Array.isArray(value)) return null
  const [n, at] = value as unknown[]
  return isCount(n) && isCount(at) ? [n, at] : null
}

function namedOf(value: unknown): { n: number; name: string } | undefined {
  if (typeof value !== 'object' || value === null) return undefined
  const { n, name } = value as Record<string, unknown>
  return isCount(n) && isText(name) ? { n, name } : undefined
}

function lineOf(fields: Record<string, unknown>): KeptLine | undefined {
  const { n, at, by, previous, job, from, begin, edit, back } = fields
  if (!isCount(n) || !isText(at) || !isText(by)) return undefined
  if (begin !== undefined) {
    if (!isText(job) || !(previous === null || isText(previous))) return undefined
    return { n, at, by, job, begin, from: isText(from) ? from : null, previous }
  }
  if (!isText(previous) || edit === undefined || back === undefined) return undefined
  const undoes = namedOf(fields['undoes'])
  const redoes = namedOf(fields['redoes'])
  const together = fields['together']
  return {
    n,
    at,
    by,
    edit,
    back,
    previous,
    below: refOf(fields['below']),
    ...(undoes === undefined ? {} : { undoes }),
    ...(redoes === undefined ? {} : { redoes }),
    ...(fields['beside'] === undefined ? {} : { beside: refOf(fields['beside']) }),
    ...(isCount(together) ? { together } : {}),
  }
}

/** Bytes of a line in which a beginning says that it is one: before it stands who, when and of which job. */
const HEAD = 4096

/** Whether a line may be a beginning, told without reading it. */
export const mayBegin = (bytes: Buffer): boolean => bytes.subarray(0, HEAD).includes('"begin":')
