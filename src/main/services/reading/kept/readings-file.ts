import { createHash } from 'node:crypto'
import { appendFile, mkdir, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { figureReadingSchema } from '../../../../contract/readings.ts'
import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { FigureReading } from '../../../../core/reading/figure-reading.ts'
import { boxToReadSchema } from '../process/figure-protocol.ts'

/** Sheets whose readings are kept; of more, those that were asked for longest ago are dropped. */
const MOST_FILES = 200
/** No sheet has so many figures that its readings take more. Bytes. */
const MOST_BYTES = 64 * 1024 ** 2

/** A line of the file. */
const lineSchema = z.union([
  /** What may hold a figure on one part of the page. */
  z.strictObject({ part: z.int().min(0), boxes: z.array(boxToReadSchema) }),
  /** What was read in the box of a part, by its place there. */
  z.strictObject({ part: z.int().min(0), box: z.int().min(0), reading: figureReadingSchema }),
])

type Line = z.infer<typeof lineSchema>

/** What was found and read of a page. */
export interface PageFigures {
  /** By the part of the page. */
  boxes: Map<number, readonly BoxToRead[]>
  /** By the part, and the place among its boxes. */
  readings: Map<number, Map<number, FigureReading>>
}

/** The figures of one page, as one engine read them: kept as they come, so that a reading that was broken off goes on. */
export class ReadingsFile {
  readonly #folder: string
  readonly #path: string
  /** One line after another. */
  #written: Promise<unknown> = Promise.resolve()

  /**
   * @param folder where this machine keeps readings, of all jobs
   * @param of what tells them from others: the page, what read it and how
   */
  constructor(folder: string, of: readonly string[]) {
    this.#folder = folder
    this.#path = join(folder, `${createHash('sha256').update(JSON.stringify(of)).digest('hex')}.ndjson`)
  }

  /** What is kept; nothing where that can't be read. What stands after a line that was torn is left out. */
  async read(): Promise<PageFigures> {
    const figures: PageFigures = { boxes: new Map(), readings: new Map() }
    const text = await this.#text().catch(() => '')
    for (const line of text.split('\n')) {
      const known = lineOf(line)
      if (known === null) break
      take(figures, known)
    }
    return figures
  }

  /** Keeps what was found on a part of the page. What can't be kept is read anew another time. */
  keepBoxes(part: number, boxes: readonly BoxToRead[]): void {
    this.#keep({ part, boxes: [...boxes] })
  }

  /** Keeps what was read in a box. */
  keepReading(part: number, box: number, reading: FigureReading): void {
    this.#keep({ part, box, reading })
  }

  /** Resolves when all of it is written. */
  async end(): Promise<void> {
    await this.#written
  }

  async #text(): Promise<string> {
    if ((await stat(this.#path)).size > MOST_BYTES) return ''
    const text = await readFile(this.#path, 'utf8')
    const now = new Date()
    await utimes(this.#path, now, now).catch(() => undefined)
    // What was torn off would run into what is written next.
    if (!text.endsWith('\n') && text !== '')
      await writeFile(this.#path, text.slice(0, text.lastIndexOf('\n') + 1))
    return text
  }

  #keep(line: Line): void {
    const write = async (): Promise<void> => {
      await this.#tidied()
      await appendFile(this.#path, `${JSON.stringify(line)}\n`)
    }
    this.#written = this.#written.then(write).catch(() => undefined)
  }

  #tidying: Promise<void> | undefined

  #tidied(): Promise<void> {
    this.#tidying ??= makeRoom(this.#folder)
    return this.#tidying
  }
}

function lineOf(line: string): Line | null {
  try {
    return lineSchema.parse(JSON.parse(line))
  } catch {
    return null
  }
}

function take({ boxes, readings }: PageFigures, line: Line): void {
  if ('boxes' in line) {
    boxes.set(line.part, line.boxes)
    return
  }
  const part = readings.get(line.part) ?? new Map<number, FigureReading>()
  readings.set(line.part, part.set(line.box, line.reading))
}

/** Makes the folder, and drops from it what was asked for longest ago. */
async function makeRoom(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true })
  const names = (await readdir(folder)).filter((name) => name.endsWith('.ndjson'))
  if (names.length < MOST_FILES) return
  const files = await Promise.all(
    names.map(async (name) => ({ name, at: (await stat(join(folder, name))).mtimeMs })),
  )
  files.sort((a, b) => b.at - a.at)
  for (const { name } of files.slice(MOST_FILES - 1)) await rm(join(folder, name), { force: true })
}
