import { readFile, stat } from 'node:fs/promises'
import { systemCause } from '../../services/files/system-reason.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

/** A box on a page, pixels of it. */
export interface GivenBox {
  x: number
  y: number
  width: number
  height: number
}

/** No page has more figures. Common practice, no source. */
const MOST = 10_000
/** Bytes of a file with so many boxes, at most. */
const MOST_BYTES = 1_000_000

/** The box that a text gives, as `x,y,width,height`; undefined: it gives none. */
export function boxOf(text: string): GivenBox | undefined {
  const parts = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  const [x = Number.NaN, y = Number.NaN, width = Number.NaN, height = Number.NaN, ...rest] = parts
  const isBox = rest.length === 0 && [x, y, width, height].every(Number.isFinite) && width > 0 && height > 0
  return isBox ? { x, y, width, height } : undefined
}

/**
 * The boxes of a file, one a line; empty lines count for nothing.
 * @param file `-`: standard input
 * @throws CliError when it can't be read, or a line is no box
 */
export async function boxesIn(file: string, stdin: NodeJS.ReadableStream): Promise<GivenBox[]> {
  const text = (file === '-' ? await allOf(stdin) : await textOf(file)).replace(/^\uFEFF/, '')
  const boxes: GivenBox[] = []
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue
    const box = boxOf(line)
    const at = { file: file === '-' ? null : file, line: i + 1, text: line.trim().slice(0, 60) }
    if (box === undefined) throw new CliError(reason('cli.no-box', at))
    boxes.push(box)
  }
  mustBeFew(boxes)
  return boxes
}

/** @throws CliError when there are more than any page has figures */
export function mustBeFew(boxes: readonly GivenBox[]): void {
  if (boxes.length > MOST) throw new CliError(reason('cli.boxes-too-many', { most: MOST }))
}

async function textOf(file: string): Promise<string> {
  try {
    if ((await stat(file)).size > MOST_BYTES) throw new CliError(reason('cli.boxes-too-many', { most: MOST }))
    return await readFile(file, 'utf8')
  } catch (error) {
    if (error instanceof CliError) throw error
    throw new CliError(reason('cli.boxes-unreadable', { file, why: systemCause(error) }))
  }
}

async function allOf(stdin: NodeJS.ReadableStream): Promise<string> {
  let text = ''
  for await (const piece of stdin) {
    text += String(piece)
    if (text.length > MOST_BYTES) throw new CliError(reason('cli.boxes-too-many', { most: MOST }))
  }
  return text
}
