import { homedir } from 'node:os'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { HostEvent } from '../../../contract/host-event.ts'
import { frontAt, pageThumbnailAt, pictureAt } from '../../../contract/picture-addresses.ts'
import type { Reply } from '../../../contract/reply.ts'
import { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { KeptLimits } from '../limits/kept-limits.ts'
import { oneLine } from '../log/one-line.ts'
import { KeptPerson } from '../people/kept-person.ts'
import type { PictureFile } from '../pictures/pictures.ts'
import { WorkQueue } from '../process/work-queue.ts'
import { ServiceError } from '../service-error.ts'
import { Glances } from '../shelf/glances.ts'
import { reason } from '../words/services-words.ts'
import { CurrentJob } from './current-job.ts'
import { handling } from './handlers.ts'
import { Listeners } from './listeners.ts'
import { OwnTemporary } from './own-temporary.ts'
import { PageThumbnails } from './page-thumbnails.ts'
import { Passwords } from './passwords.ts'
import { readRequest, requestInWords } from './read-request.ts'
import { refusedFor, whyNot } from './refuse.ts'
import { sampleCopy } from './sample-copy.ts'
import { Uploads } from './uploads.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

/** What the hosts carry to their windows: one job at a time, its edits and pictures, and what was open before. */
export class Workbench {
  readonly #options: WorkbenchOptions
  readonly #log: (line: string) => void
  readonly #listeners: Listeners
  readonly #temporary: OwnTemporary
  readonly #uploads: Uploads
  readonly #current: CurrentJob
  readonly #limits: KeptLimits
  readonly #thumbnails: PageThumbnails
  readonly #glances: Glances
  readonly #handle: ReturnType<typeof handling>
  /** Whatever opens, closes or adds a file waits for what came before. */
  readonly #turns = new WorkQueue()
  #closing: Promise<void> | undefined

  constructor(options: WorkbenchOptions) {
    const { places, now = () => new Date() } = options
    const log = (line: string): void => options.log(oneLine(line))
    const temporary = new OwnTemporary(places.temporary)
    const recent = new RecentJobs(places.settings, log)
    const listeners = new Listeners(log)
    const passwords = new Passwords()
    this.#options = options
    this.#log = log
    this.#listeners = listeners
    this.#temporary = temporary
    this.#limits = new KeptLimits(places.settings, options.limits)
    this.#uploads = new Uploads(
      () => temporary.folder(),
      () => this.#limits.now.bytes,
    )
    this.#thumbnails = new PageThumbnails(this.#uploads, () => this.#limits.now)
    this.#glances = new Glances({
      folderOf: (id) => recent.folderOf(id),
      opened: (id) => (this.#current.job?.id === id ? this.#current.job.session.job.sheets : undefined),
      limits: () => this.#limits.now,
    })
    this.#current = new CurrentJob({
      options,
      now,
      recent,
      person: new KeptPerson(places.settings),
      temporary: () => temporary.folder(),
      limits: this.#limits,
      passwords,
      tell: (event) => listeners.tell(event),
      log,
    })
    this.#handle = handling({
      options,
      current: this.#current,
      recent,
      uploads: this.#uploads,
      limits: this.#limits,
      passwords,
      thumbnails: this.#thumbnails,
      glances: this.#glances,
      home: options.home ?? homedir(),
      inTurn: (work) => this.#inTurn(work),
      openFolder: (folder) => this.openFolder(folder),
      openSample: () => this.openSample(),
    })
  }

  /**
   * Checks what a window asks, and does it. Never throws: whatever comes over the wire gets an answer or a sentence.
   */
  async ask(name: unknown, args: unknown): Promise<Reply> {
    try {
      const request = readRequest(name, args)
      this.#mustNotBeClosed()
      await this.#limits.read()
      return { ok: true, answer: await this.#handle(request) }
    } catch (error) {
      return refusedFor(whyNot(requestInWords(name), error, this.#log))
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
   * A picture of a sheet of the open job, of a page of a scan that was handed over, or of a job that was looked at; null
   * when there is none (yet). `address` as `pictureAddress`, `pageThumbnailAddress` or `frontAddress` gives it.
   * @param dropped whoever asked wants it no more: it is not waited for, and not made for them
   */
  async picture(address: string, dropped?: AbortSignal): Promise<PictureFile | null> {
    if (typeof address !== 'string') return null
    const page = pageThumbnailAt(address)
    if (page !== null) return this.#thumbnails.picture(page, dropped)
    const front = frontAt(address)
    if (front !== null) return this.#glances.front(front, dropped)
    const wanted = pictureAt(address)
    return wanted === null ? null : ((await this.#current.job?.pictures.picture(wanted, dropped)) ?? null)
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
   * @throws ServiceError when job.json could not be written; every acknowledged edit is in the history then
   */
  close(): Promise<void> {
    this.#closing ??= this.#close()
    return this.#closing
  }

  #mustNotBeClosed(): void {
    if (this.#closing !== undefined) throw new ServiceError(reason('workbench.closed'))
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    return this.#turns.do(() => {
      this.#mustNotBeClosed()
      return work()
    })
  }

  async #close(): Promise<void> {
    // Whatever was begun is finished first.
    await this.#turns.do(async () => undefined)
    const trouble = await this.#current.close()
    this.#current.end()
    await this.#temporary.remove()
    this.#listeners.clear()
    if (trouble !== undefined) throw new ServiceError(trouble)
  }
}
