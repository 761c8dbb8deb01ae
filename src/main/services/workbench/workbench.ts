import type { AskAnswer, AskName, Reply } from '../../../contract/asks.ts'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { HostEvent } from '../../../contract/host-event.ts'
import { pictureAt } from '../../../contract/pictures.ts'
import { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { oneLine } from '../log/one-line.ts'
import type { Picture } from '../pictures/pictures.ts'
import { ServiceError } from '../service-error.ts'
import { beginJob } from './begin-job.ts'
import { bringInSheet } from './bring-in-sheet.ts'
import { askInWords, type CheckedAsk, checkAsk } from './check-ask.ts'
import { CurrentJob } from './current-job.ts'
import { InTurn } from './in-turn.ts'
import { Listeners } from './listeners.ts'
import { openRecent } from './open-recent.ts'
import { OwnTemporary } from './own-temporary.ts'
import { plainEdit } from './plain-edit.ts'
import { sampleCopy } from './sample-copy.ts'
import { SCAN_BYTES, Uploads } from './uploads.ts'
import { whyRefused } from './why-refused.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

const CLOSED = 'The workbench is closed: start it again.'

/** What the hosts carry to their windows: one job at a time, its edits and pictures, and what was open before. */
export class Workbench {
  readonly #options: WorkbenchOptions
  readonly #log: (line: string) => void
  readonly #listeners: Listeners
  readonly #recent: RecentJobs
  readonly #temporary: OwnTemporary
  readonly #uploads: Uploads
  readonly #current: CurrentJob
  /** Whatever opens, closes or adds a file waits for what came before. */
  readonly #turns = new InTurn()
  #closing: Promise<void> | undefined

  constructor(options: WorkbenchOptions) {
    const { places, scanBytes = SCAN_BYTES, now = () => new Date() } = options
    const log = (line: string): void => options.log(oneLine(line))
    const temporary = new OwnTemporary(places.temporary)
    const recent = new RecentJobs(places.settings, log)
    const listeners = new Listeners(log)
    this.#options = options
    this.#log = log
    this.#listeners = listeners
    this.#recent = recent
    this.#temporary = temporary
    this.#uploads = new Uploads(() => temporary.folder(), scanBytes)
    this.#current = new CurrentJob({
      options,
      now,
      recent,
      temporary: () => temporary.folder(),
      tell: (event) => listeners.tell(event),
      log,
    })
  }

  /**
   * Checks what a window asks, and does it. Never throws: whatever comes over the wire gets an answer or a sentence.
   */
  async ask(name: unknown, args: unknown): Promise<Reply> {
    try {
      const asked = checkAsk(name, args)
      this.#mustNotBeClosed()
      return { ok: true, answer: await this.#answer(asked) }
    } catch (error) {
      return { ok: false, sentence: whyRefused(askInWords(name), error, this.#log) }
    }
  }

  /** Calls back at every event; the function that comes back ends that. */
  listen(heard: (event: HostEvent) => void): () => void {
    return this.#listeners.add(heard)
  }

  /** Tells one window how things stand and how far the pictures are, in order with what `listen` tells. */
  async greet(heard: (event: HostEvent) => void): Promise<void> {
    await this.#current.greet(heard)
  }

  /** A picture of a sheet of the open job; null when there is none (yet). `address` as `pictureAddress` gives it. */
  async picture(address: string): Promise<Picture | null> {
    const wanted = typeof address === 'string' ? pictureAt(address) : null
    return wanted === null ? null : ((await this.#current.job?.pictures.picture(wanted)) ?? null)
  }

  /**
   * Takes the bytes of a scan that a person handed over into a file of its own.
   * @returns the id by which `new-job` and `add-sheet` name it
   * @throws ServiceError with a sentence; nothing of it is kept then
   */
  async receiveScan(name: string, bytes: AsyncIterable<Uint8Array>): Promise<string> {
    this.#mustNotBeClosed()
    return this.#uploads.receive(name, bytes)
  }

  /**
   * For the host itself, never for a page: opens a folder that a person named.
   * @throws ServiceError when it can't be opened; what was open stays open
   */
  async openFolder(folder: string): Promise<BenchState> {
    return this.#inTurn(() => this.#current.open(folder))
  }

  /** Opens the practice copy of the sample job. @throws ServiceError as `openFolder` */
  async openSample(): Promise<BenchState> {
    const { sample, shelf } = this.#options.places
    return this.#inTurn(async () => this.#current.open(await sampleCopy(sample, shelf)))
  }

  /**
   * Stops what runs, saves and gives the job back, and removes what was temporary.
   * @throws ServiceError when job.json could not be written; every acknowledged edit is in the journal then
   */
  close(): Promise<void> {
    this.#closing ??= this.#close()
    return this.#closing
  }

  #answer(asked: CheckedAsk): Promise<AskAnswer<AskName>> {
    switch (asked.name) {
      case 'look':
        return this.#current.state()
      case 'open-sample':
        return this.openSample()
      case 'open-recent':
        return this.#inTurn(() => openRecent(this.#current, this.#recent, asked.args.recent))
      case 'choose-job':
        return this.#chooseJob()
      case 'new-job':
        return this.#inTurn(() =>
          beginJob(this.#current, this.#uploads, this.#options.places.shelf, asked.args),
        )
      case 'close-job':
        return this.#inTurn(() => this.#closeJob())
      case 'edit': {
        const { edit, by, place } = asked.args
        return this.#current.mustBeOpen(place).make({ kind: 'edit', edit: plainEdit(edit) }, by)
      }
      case 'undo':
      case 'redo':
        return this.#current.mustBeOpen(asked.args.place).make({ kind: asked.name }, asked.args.by)
      case 'add-sheet':
        return this.#inTurn(() => this.#addSheet(asked.args))
      case 'show-sheet':
        return this.#current.mustBeOpen().pictures.show(asked.args.sheet)
      case 'stop-pictures':
        return this.#stopPictures(asked.args.sheet)
    }
  }

  #mustNotBeClosed(): void {
    if (this.#closing !== undefined) throw new ServiceError(CLOSED)
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    return this.#turns.do(() => {
      this.#mustNotBeClosed()
      return work()
    })
  }

  async #chooseJob(): Promise<BenchState> {
    const { chooseJobFolder } = this.#options
    if (chooseJobFolder === undefined) {
      throw new ServiceError(
        'This window has no dialog to choose a folder with: open the job from the command line, ' +
          'with "scantling open" and its folder.',
      )
    }
    const folder = await chooseJobFolder()
    return folder === undefined ? this.#current.state() : this.openFolder(folder)
  }

  async #closeJob(): Promise<BenchState> {
    const trouble = await this.#current.close()
    const state = await this.#current.tellState()
    if (trouble !== undefined) throw new ServiceError(trouble)
    return state
  }

  async #addSheet({
    upload,
    by,
    place,
  }: Extract<CheckedAsk, { name: 'add-sheet' }>['args']): Promise<AskAnswer<'add-sheet'>> {
    const given = this.#uploads.find(upload)
    try {
      return await bringInSheet(this.#current.mustBeOpen(place), given, by)
    } finally {
      await this.#uploads.remove(upload)
    }
  }

  async #stopPictures(sheet: string): Promise<null> {
    this.#current.mustBeOpen().pictures.stop(sheet)
    return null
  }

  async #close(): Promise<void> {
    // Whatever was begun is finished first.
    await this.#turns.idle()
    const trouble = await this.#current.close()
    await this.#temporary.remove()
    this.#listeners.clear()
    if (trouble !== undefined) throw new ServiceError(trouble)
  }
}
