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
  /** What was read in the box of a part, by its place there. knew: by which known figures; without: by none */
  z.strictObject({
    part: z.int().min(0),
    box: z.int().min(0),
    reading: figureReadingSchema,
    knew: z.array(z.string()).optional(),
  }),
])

type Line = z.infer<typeof lineSchema>

/** What was found and read of a page. */
export interface PageFigures {
  /** By the part of the page. */
  boxes: Map<number, readonly BoxToRead[]>
  /** By the part, and the place among its boxes. */
  readings: Map<number, Map<number, FigureReading>>
  /** Of those that were read with a hand, likewise: the names of the known figures that it was read by. */
  knew: Map<number, Map<number, readonly string[]>>
}

/** Of a page of which nothing was found or read. */
export const noFigures = (): PageFigures => ({ boxes: new Map(), readings: new Map(), knew: new Map() })

/**
 * The figures of one page, as one engine read them: kept as they come, so that a reading that was broken off goes on. Each
 * says what of the hand was known, so that what was read by one state of it is not taken for another's.
 */
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
    const figures = noFigures()
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

  /** Keeps what was read in a box, in the place of what was read there before. @param knew names of known figures */
  keepReading(part: number, box: number, reading: FigureReading, knew: readonly string[] = []): void {
    this.#keep({ part, box, reading, ...(knew.length === 0 ? {} : { knew: [...knew] }) })
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

function take(figures: PageFigures, line: Line): void {
  if ('boxes' in line) figures.boxes.set(line.part, line.boxes)
  else putReading(figures, { part: line.part, place: line.box }, line.reading, line.knew ?? [])
}

/** Puts what was read in a box in the place of what was read there before. @param knew names of known figures */
export function putReading(
  { readings, knew: known }: PageFigures,
  { part, place }: { part: number; place: number },
  reading: FigureReading,
  knew: readonly string[],
): void {
  readings.set(part, (readings.get(part) ?? new Map<number, FigureReading>()).set(place, reading))
  known.set(part, (known.get(part) ?? new Map<number, readonly string[]>()).set(place, knew))
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
