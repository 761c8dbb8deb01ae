import { readFile, realpath, stat } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { Glance } from '../../../contract/jobs.ts'
import { type FrontWanted, frontAddress, scanVersion } from '../../../contract/picture-addresses.ts'
import type { Job, Sheet } from '../../../core/job/model/types.ts'
import { dimensionTable } from '../../../core/ledger/table/dimension-table.ts'
import { asSentence } from '../../../core/words/as-sentence.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { isBelow } from '../files/is-below.ts'
import { fileStamp } from '../job-folder/history/job-file.ts'
import { readJobFolder } from '../job-folder/read-job-folder.ts'
import { cacheFolder, historyFile, jobFile } from '../job-layout/job-layout.ts'
import type { Limits } from '../limits/kept-limits.ts'
import { pictureFolderName, THUMBNAIL } from '../pictures/layout/picture-names.ts'
import type { PictureFile } from '../pictures/pictures.ts'
import { WorkQueue } from '../process/work-queue.ts'
import { resolveScan } from '../scans/kept/scan-path.ts'
import { pageThumbnail } from '../scans/reader/read-scan.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'

/** Bytes; a small picture has some ten thousand. */
const MOST = 1024 * 1024

interface Seen {
  stamp: string
  glance: Glance
  sheets: readonly Sheet[]
}

export interface GlancesOver {
  /** The folder that an id stands for which a window was told. */
  folderOf: (id: string) => string | undefined
  /** The sheets of the job of an id, where that is open. */
  opened: (id: string) => readonly Sheet[] | undefined
  limits: () => Limits
}

/** How jobs stand that need not be open: read as their folders hold them, worked out once as long as those stay. */
export class Glances {
  readonly #over: GlancesOver
  readonly #seen = new Map<string, Seen>()
  /** A table may take a while to work out, and whoever opens a job meanwhile should not wait for all of them. */
  readonly #turns = new WorkQueue()

  constructor(over: GlancesOver) {
    this.#over = over
  }

  /** How a job stands. @throws ServiceError when no window was told of it */
  async of(id: string): Promise<Glance> {
    const folder = this.#over.folderOf(id)
    if (folder === undefined) throw new ServiceError(reason('recent.not-listed'))
    return (await this.#turns.do(() => this.#look(id, folder))).glance
  }

  /** The small picture of a sheet of a job that is open or was looked at; null when there is none. @param dropped whoever asked wants it no more */
  async front({ job, sheet: id, version }: FrontWanted, dropped?: AbortSignal): Promise<PictureFile | null> {
    const folder = this.#over.folderOf(job)
    const sheets = this.#over.opened(job) ?? this.#seen.get(job)?.sheets
    const sheet = sheets?.find((one) => one.id === id)
    if (folder === undefined || sheet === undefined || scanVersion(sheet.scan) !== version) return null
    return (await madeBefore(folder, sheet)) ?? (await this.#madeNow(folder, sheet, dropped))
  }

  async #look(id: string, folder: string): Promise<Seen> {
    const stamp = await stampOf(folder)
    const before = this.#seen.get(id)
    if (before?.stamp === stamp) return before
    const seen = { stamp, ...(await glanceAt(id, folder)) }
    this.#seen.set(id, seen)
    return seen
  }

  async #madeNow(folder: string, sheet: Sheet, signal?: AbortSignal): Promise<PictureFile | null> {
    try {
      const path = await resolveScan(folder, sheet.scan.file, sheet)
      const scan = { path, called: basename(path) }
      const how = { limits: this.#over.limits(), ...(signal === undefined ? {} : { signal }) }
      return { bytes: await pageThumbnail(scan, sheet.scan.page, how), type: 'image/jpeg' }
    } catch {
      return null
    }
  }
}

const stampOf = async (folder: string): Promise<string> =>
  (
    await Promise.all([jobFile(folder), historyFile(folder)].map((path) => fileStamp(path).catch(() => '')))
  ).join(' ')

async function glanceAt(id: string, folder: string): Promise<Pick<Seen, 'glance' | 'sheets'>> {
  try {
    const { job } = await readJobFolder(folder)
    const [sheet] = job.sheets
    const front = sheet && frontAddress({ job: id, sheet: sheet.id, version: scanVersion(sheet.scan) })
    return { sheets: job.sheets, glance: { ...standingOf(job), front: front ?? null } }
  } catch (error) {
    if (!(error instanceof ScantlingError)) throw error
    const nothing = { sheets: 0, dimensions: 0, disputed: 0, noValue: 0, front: null }
    return {
      sheets: [],
      glance: { title: basename(folder), ...nothing, problem: asSentence(inWords(error.reason)) },
    }
  }
}

function standingOf(job: Job): Omit<Glance, 'front'> {
  const { rows } = dimensionTable(job)
  const count = (status: string): number => rows.filter((row) => row.status === status).length
  return {
    title: job.title,
    sheets: job.sheets.length,
    dimensions: rows.length,
    disputed: count('disputed'),
    noValue: count('open'),
  }
}

/** The picture that was made when the job was open, where it lies in the job itself. */
async function madeBefore(folder: string, { scan }: Sheet): Promise<PictureFile | null> {
  try {
    const path = await realpath(join(cacheFolder(folder), pictureFolderName(scan), THUMBNAIL))
    if (!isBelow(path, await realpath(folder))) return null
    const { size } = await stat(path)
    return size > 0 && size <= MOST ? { bytes: await readFile(path), type: 'image/jpeg' } : null
  } catch {
    return null
  }
}
