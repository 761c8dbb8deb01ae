import type { AskAnswer, AskName, Reply } from '../../../contract/asks.ts'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { HostEvent } from '../../../contract/host-event.ts'
import { pageThumbnailAt, pictureAt, type SheetPictures } from '../../../contract/pictures.ts'
import type { ScanLook } from '../../../contract/scan-look.ts'
import { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { KeptLimits } from '../limits/kept-limits.ts'
import { oneLine } from '../log/one-line.ts'
import type { Picture } from '../pictures/pictures.ts'
import { lookInto } from '../scans/reader/read-scan.ts'
import { ScanLocked } from '../scans/scan-locked.ts'
import { ServiceError } from '../service-error.ts'
import { beginJob } from './begin-job.ts'
import { bringInSheets } from './bring-in-sheets.ts'
import { askInWords, type CheckedAsk, checkAsk } from './check-ask.ts'
import { CurrentJob } from './current-job.ts'
import { InTurn } from './in-turn.ts'
import { Listeners } from './listeners.ts'
import { openRecent } from './open-recent.ts'
import { OwnTemporary } from './own-temporary.ts'
import { PageThumbnails } from './page-thumbnails.ts'
import { Passwords } from './passwords.ts'
import { plainEdit } from './plain-edit.ts'
import { sampleCopy } from './sample-copy.ts'
import { unlockSheet } from './unlock-sheet.ts'
import { Uploads } from './uploads.ts'
import { whyRefused } from './why-refused.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

type ArgsOf<N extends CheckedAsk['name']> = Extract<CheckedAsk, { name: N }>['args']

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
  readonly #limits: KeptLimits
  readonly #passwords = new Passwords()
  readonly #thumbnails: PageThumbnails
  /** Whatever opens, closes or adds a file waits for what came before. */
  readonly #turns = new InTurn()
  #closing: Promise<void> | undefined

  constructor(options: WorkbenchOptions) {
    const { places, scanBytes, now = () => new Date() } = options
    const log = (line: string): void => options.log(oneLine(line))
    const temporary = new OwnTemporary(places.temporary)
    const recent = new RecentJobs(places.settings, log)
    const listeners = new Listeners(log)
    this.#options = options
    this.#log = log
    this.#listeners = listeners
    this.#recent = recent
    this.#temporary = temporary
    this.#limits = new KeptLimits(places.settings)
    this.#uploads = new Uploads(
      () => temporary.folder(),
      () => scanBytes ?? this.#limits.now.bytes,
    )
    this.#thumbnails = new PageThumbnails(this.#uploads, () => this.#limits.now)
    this.#current = new CurrentJob({
      options,
      now,
      recent,
      temporary: () => temporary.folder(),
      limits: this.#limits,
      passwords: this.#passwords,
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
      await this.#limits.read()
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

  /**
   * A picture of a sheet of the open job, or of a page of a scan that was handed over; null when there is none (yet).
   * `address` as `pictureAddress` or `pageThumbnailAddress` gives it.
   */
  async picture(address: string): Promise<Picture | null> {
    if (typeof address !== 'string') return null
    const page = pageThumbnailAt(address)
    if (page !== null) return this.#thumbnails.picture(page)
    const wanted = pictureAt(address)
    return wanted === null ? null : ((await this.#current.job?.pictures.picture(wanted)) ?? null)
  }

  /**
   * Takes the bytes of a scan that a person handed over into a file of its own.
   * @returns the id by which `look-into`, `new-job` and `add-sheets` name it
   * @throws ServiceError with a sentence; nothing of it is kept then
   */
  async receiveScan(name: string, bytes: AsyncIterable<Uint8Array>): Promise<string> {
    this.#mustNotBeClosed()
    await this.#limits.read()
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
        return this.#inTurn(() => this.#beginJob(asked.args))
      case 'close-job':
        return this.#inTurn(() => this.#closeJob())
      case 'edit': {
        const { edit, by, place } = asked.args
        return this.#current.mustBeOpen(place).make({ kind: 'edit', edit: plainEdit(edit) }, by)
      }
      case 'undo':
      case 'redo':
        return this.#current.mustBeOpen(asked.args.place).make({ kind: asked.name }, asked.args.by)
      case 'look-into':
        return this.#lookInto(asked.args)
      case 'drop-upload':
        return this.#dropUpload(asked.args.upload)
      case 'add-sheets':
        return this.#inTurn(() => this.#addSheets(asked.args))
      case 'unlock':
        return this.#unlock(asked.args)
      case 'limits':
        return this.#limits.read()
      case 'set-limits':
        return this.#limits.set(asked.args.limits)
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

  async #beginJob(args: ArgsOf<'new-job'>): Promise<BenchState> {
    const around = { current: this.#current, uploads: this.#uploads, passwords: this.#passwords }
    const state = await beginJob(
      { ...around, limits: this.#limits.now, shelf: this.#options.places.shelf },
      args,
    )
    for (const { upload } of args.uploads) this.#thumbnails.drop(upload)
    return state
  }

  async #lookInto({ upload, password, from = 1 }: ArgsOf<'look-into'>): Promise<ScanLook> {
    const scan = this.#uploads.find(upload)
    const how = { limits: this.#limits.now, password: password ?? scan.password }
    const look = await lookInto(scan, from, how)
    if (!look.locked) this.#uploads.looked(upload, password)
    return { upload, name: scan.called, ...look }
  }

  async #dropUpload(upload: string): Promise<null> {
    this.#thumbnails.drop(upload)
    await this.#uploads.remove(upload)
    return null
  }

  async #addSheets({
    upload,
    pages,
    password,
    by,
    place,
  }: ArgsOf<'add-sheets'>): Promise<AskAnswer<'add-sheets'>> {
    const given = this.#uploads.wanted(upload, pages, password)
    try {
      const around = { bench: this.#current.mustBeOpen(place), passwords: this.#passwords }
      const added = await bringInSheets({ ...around, limits: this.#limits.now }, given, by)
      await this.#dropUpload(upload)
      return added
    } catch (error) {
      if (!(error instanceof ScanLocked)) await this.#uploads.refused(upload)
      throw error
    }
  }

  async #unlock({ sheet, password }: ArgsOf<'unlock'>): Promise<SheetPictures> {
    const bench = this.#current.mustBeOpen()
    await unlockSheet({ bench, passwords: this.#passwords, limits: this.#limits.now }, sheet, password)
    return bench.pictures.show(sheet)
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
