import { unlink } from 'node:fs/promises'
import type { Job } from '../../../../core/job/model/types.ts'
import { exists } from '../../files/exists.ts'
import { replaceFile } from '../../files/replace-file.ts'
import { systemCause } from '../../files/system-reason.ts'
import { beforeHistoryFolder, journalFile } from '../../job-layout/job-layout.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import type { CarriedOver } from './carry-over.ts'
import { type HeldHistory, HeldLines } from './held-history.ts'
import { ChangedByAnother, HistoryFile } from './history-file.ts'
import type { OpenHistory } from './history-handle.ts'
import type { JobFile } from './job-file.ts'
import { keepFile } from './keep-file.ts'
import type { KeptHistory } from './kept-history.ts'
import type { LineRef, Tip } from './kept-line.ts'
import { snapshotText } from './snapshot.ts'
import type { Step } from './undo-stacks.ts'

interface FormBefore {
  folder: string
  path: string
  carried: CarriedOver
  /** The files as they were read. */
  files: { job: Buffer; journal: Buffer }
  jobFile: JobFile
  open: OpenHistory
  setAside: (bytes: Buffer) => Promise<void>
}

/**
 * The history of a folder of the form before. It comes to disk with the first edit, so that looking at an old job changes
 * nothing; its files are kept as they were.
 */
export class CarriedHistory implements KeptHistory {
  readonly path: string
  readonly #before: FormBefore
  #file: HistoryFile | undefined

  constructor(before: FormBefore) {
    this.path = before.path
    this.#before = before
  }

  get tip(): Tip {
    return this.#file?.tip ?? this.#before.carried.tip
  }

  async mustBeOurs(): Promise<void> {
    if (this.#file !== undefined) return this.#file.mustBeOurs()
    if (await exists(this.path)) throw new ChangedByAnother('history')
  }

  async ready(): Promise<void> {
    await this.#onDisk()
  }

  async append(text: string, tip: Tip): Promise<void> {
    const file = await this.#onDisk()
    await file.append(text, tip)
  }

  async #onDisk(): Promise<HistoryFile> {
    try {
      return this.#file ?? (await this.#begin())
    } catch (error) {
      if (error instanceof ServiceError || error instanceof ChangedByAnother) throw error
      throw new ServiceError(reason('history.not-written', { path: this.path, cause: systemCause(error) }))
    }
  }

  async stepAt(ref: LineRef, job: Job): Promise<Step | null> {
    return this.#before.carried.steps.get(ref[0]) ?? (await this.#file?.stepAt(ref, job)) ?? null
  }

  async held(tip: Tip): Promise<HeldHistory> {
    if (this.#file !== undefined) return this.#file.held(tip)
    const lines = new HeldLines()
    lines.takeText(this.#before.carried.text)
    return lines.upTo(tip.hash)
  }

  async close(): Promise<void> {
    await this.#file?.close()
  }

  /**
   * Keeps the old files, then writes the history, then job.json, then takes the journal away: wherever that is cut off, the
   * folder is still one of the form before, or the history says which job.json it was made of.
   */
  async #begin(): Promise<HistoryFile> {
    const { folder, carried, files, jobFile: document, open, setAside } = this.#before
    const kept = beforeHistoryFolder(folder)
    await keepFile(kept, 'job.json', files.job)
    if (files.journal.length > 0) await keepFile(kept, 'journal.ndjson', files.journal)
    await document.mustBeOurs()
    await replaceFile(this.path, carried.text)
    const size = Buffer.byteLength(carried.text)
    const { text: written, tip } = carried
    const file = new HistoryFile({ path: this.path, open, tip, size, setAside, written })
    this.#file = file
    await document.write(snapshotText(carried.job, carried.tip))
    await unlink(journalFile(folder)).catch(() => undefined)
    return file
  }
}
