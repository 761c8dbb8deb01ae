import { realpath, rm, stat } from 'node:fs/promises'
import { resolve } from 'node:path'
import type { AskAnswer, AskName, Reply } from '../../../contract/asks.ts'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { HostEvent } from '../../../contract/host-event.ts'
import { pictureAt } from '../../../contract/pictures.ts'
import { ScantlingError } from '../../../core/scantling-error.ts'
import { createJob } from '../job-folder/create-job.ts'
import { describeNewJob } from '../job-folder/describe-new-job.ts'
import { jobFile } from '../job-folder/layout.ts'
import { openJob } from '../job-folder/open-job.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { type Picture, Pictures } from '../pictures/pictures.ts'
import { pyramidProgram } from '../pictures/pyramid-program.ts'
import { doubleRemarks, scanRemarks } from '../scans/scan-remarks.ts'
import { ServiceError } from '../service-error.ts'
import { asSentence } from './as-sentence.ts'
import { bringInSheet } from './bring-in-sheet.ts'
import { askInWords, type CheckedAsk, checkAsk } from './check-ask.ts'
import { JobOnBench, QUIET } from './job-on-bench.ts'
import { dropJobFolder, newJobFolder } from './new-job-folder.ts'
import { oneLine } from './one-line.ts'
import { ownTemporary } from './own-temporary.ts'
import { plainEdit } from './plain-edit.ts'
import { sampleCopy, sampleCopyFolder } from './sample-copy.ts'
import { SCAN_BYTES, Uploads } from './uploads.ts'

export interface WorkbenchOptions {
  host: 'electron' | 'local'
  version: string
  places: {
    /** Folder for recent.json. */
    settings: string
    /** Folder where new jobs are made. */
    shelf: string
    /** The sample job that ships. */
    sample: string
    /** Folder for what is removed in the end. */
    temporary: string
  }
  /** Who is at work when nobody is named. */
  person: string
  /** Lets a person choose a folder with the system's own dialog; undefined: the host has none. */
  chooseJobFolder?: () => Promise<string | undefined>
  now?: () => Date
  /** Told one line for each ask that was refused or failed. */
  log: (line: string) => void
  /** Milliseconds without an edit after which job.json is written anew. */
  quiet?: number
  /** The largest scan that is taken in, bytes. */
  scanBytes?: number
  /** The built program that cuts tiles; found by itself unless given. */
  pyramidProgram?: string
}

type NewJob = Extract<CheckedAsk, { name: 'new-job' }>['args']

const CLOSED = 'The workbench is closed: start it again.'

/** What the hosts carry to their windows: one job at a time, its edits and pictures, and what was open before. */
export class Workbench {
  readonly #options: WorkbenchOptions
  readonly #now: () => Date
  readonly #listeners = new Set<(event: HostEvent) => void>()
  readonly #recent: RecentJobs
  readonly #uploads: Uploads
  readonly #program: string | undefined
  #opened: JobOnBench | null = null
  #ownTemporary: Promise<string> | undefined
  /** Whatever opens, closes or adds a file waits for what came before. */
  #turn: Promise<unknown> = Promise.resolve()
  #closing: Promise<void> | undefined

  constructor(options: WorkbenchOptions) {
    this.#options = options
    this.#now = options.now ?? (() => new Date())
    this.#recent = new RecentJobs(options.places.settings, this.#log)
    this.#uploads = new Uploads(() => this.#temporary(), options.scanBytes ?? SCAN_BYTES)
    this.#program = options.pyramidProgram ?? pyramidProgram()
  }

  /**
   * Checks what a window asks, and does it. Never throws: whatever comes over the wire gets an answer or a sentence.
   */
  async ask(name: unknown, args: unknown): Promise<Reply> {
    try {
      const asked = checkAsk(name, args)
      if (this.#closing !== undefined) throw new ServiceError(CLOSED)
      return { ok: true, answer: await this.#answer(asked) }
    } catch (error) {
      return { ok: false, sentence: this.#inWords(askInWords(name), error) }
    }
  }

  /** Calls back at every event; the function that comes back ends that. */
  listen(heard: (event: HostEvent) => void): () => void {
    // Wrapped, so that the same function can listen twice and end each by itself.
    const listener = (event: HostEvent): void => heard(event)
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** A picture of a sheet of the open job; null when there is none (yet). `address` as `pictureAddress` gives it. */
  async picture(address: string): Promise<Picture | null> {
    const wanted = typeof address === 'string' ? pictureAt(address) : null
    return wanted === null ? null : ((await this.#opened?.pictures.picture(wanted)) ?? null)
  }

  /**
   * Takes the bytes of a scan that a person handed over into a file of its own.
   * @returns the id by which `new-job` and `add-sheet` name it
   * @throws ServiceError with a sentence; nothing of it is kept then
   */
  async receiveScan(name: string, bytes: AsyncIterable<Uint8Array>): Promise<string> {
    if (this.#closing !== undefined) throw new ServiceError(CLOSED)
    return this.#uploads.receive(name, bytes)
  }

  /**
   * For the host itself, never for a page: opens a folder that a person named.
   * @throws ServiceError when it can't be opened; what was open stays open
   */
  async openFolder(folder: string): Promise<BenchState> {
    return this.#inTurn(() => this.#open(folder))
  }

  /** Opens the practice copy of the sample job. @throws ServiceError as `openFolder` */
  async openSample(): Promise<BenchState> {
    return this.#inTurn(() => this.#openSample())
  }

  /**
   * Stops what runs, saves and gives the job back, and removes what was temporary.
   * @throws ServiceError when job.json could not be written; every acknowledged edit is in the journal then
   */
  close(): Promise<void> {
    this.#closing ??= this.#close()
    return this.#closing
  }

  readonly #log = (line: string): void => this.#options.log(oneLine(line))

  #answer(asked: CheckedAsk): Promise<AskAnswer<AskName>> {
    switch (asked.name) {
      case 'look':
        return this.#state()
      case 'open-sample':
        return this.openSample()
      case 'open-recent':
        return this.#inTurn(() => this.#openRecent(asked.args.recent))
      case 'choose-job':
        return this.#chooseJob()
      case 'new-job':
        return this.#inTurn(() => this.#newJob(asked.args))
      case 'close-job':
        return this.#inTurn(() => this.#closeJob())
      case 'edit':
        return this.#job().make({ kind: 'edit', edit: plainEdit(asked.args.edit) }, asked.args.by)
      case 'undo':
      case 'redo':
        return this.#job().make({ kind: asked.name }, asked.args.by)
      case 'add-sheet':
        return this.#inTurn(() => this.#addSheet(asked.args.upload, asked.args.by))
      case 'show-sheet':
        return this.#job().pictures.show(asked.args.sheet)
      case 'stop-pictures':
        return this.#stopPictures(asked.args.sheet)
    }
  }

  #inWords(what: string, error: unknown): string {
    if (error instanceof ScantlingError) {
      this.#log(`refused ${what}: ${error.message}`)
      return asSentence(error.message)
    }
    this.#log(`failed ${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
    return 'A fault in the program kept it from doing that. Nothing was changed; please report it, and try again.'
  }

  #tell(event: HostEvent): void {
    for (const listener of [...this.#listeners]) {
      try {
        listener(event)
      } catch (error) {
        this.#log(`a listener failed: ${String(error)}`)
      }
    }
  }

  async #tellState(): Promise<BenchState> {
    const state = await this.#state()
    this.#tell({ kind: 'bench', state })
    return state
  }

  async #state(): Promise<BenchState> {
    const { version, host, person, chooseJobFolder } = this.#options
    const recent = await this.#recent.list()
    const opened = this.#opened?.describe() ?? null
    return { version, host, person, choosesFolders: chooseJobFolder !== undefined, recent, opened }
  }

  #job(): JobOnBench {
    if (this.#opened === null) throw new ServiceError('No job is open: open one first.')
    return this.#opened
  }

  #temporary(): Promise<string> {
    this.#ownTemporary ??= ownTemporary(this.#options.places.temporary).catch((error: unknown) => {
      this.#ownTemporary = undefined
      throw error
    })
    return this.#ownTemporary
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#turn.then(() => {
      if (this.#closing !== undefined) throw new ServiceError(CLOSED)
      return work()
    })
    this.#turn = mine.catch(() => undefined)
    return mine
  }

  async #open(folder: string, remarks: readonly string[] = []): Promise<BenchState> {
    const path = await realpath(folder).catch(() => resolve(folder))
    if (this.#opened?.folder === path && this.#opened.session.writable) return this.#state()
    const session = await openJob(path, { mode: 'write', now: this.#now })
    const trouble = await this.#putAway()
    const sample = await realpath(sampleCopyFolder(this.#options.places.shelf)).catch(() => undefined)
    const bench: JobOnBench = new JobOnBench({
      session,
      sample: path === sample,
      remarks: trouble === undefined ? remarks : [...remarks, trouble],
      now: this.#now,
      quiet: this.#options.quiet ?? QUIET,
      kept: (kept) => this.#tell({ kind: 'kept', kept }),
      turned: () => void this.#tellState(),
      log: this.#log,
      pictures: new Pictures({
        job: path,
        writable: () => session.writable,
        temporary: () => this.#temporary(),
        sheet: (id) => bench.sheet(id),
        progressed: (progress) => this.#tell({ kind: 'pictures', progress }),
        program: this.#program,
      }),
    })
    this.#opened = bench
    await this.#recent.add({ folder: path, title: session.job.title, openedAt: this.#now().toISOString() })
    return this.#tellState()
  }

  /** Closes the job that is open. @returns what went wrong with saving it, for a person */
  async #putAway(): Promise<string | undefined> {
    const before = this.#opened
    this.#opened = null
    try {
      await before?.close()
      if (before !== null) await this.#recent.retitle(before.folder, before.session.job.title)
      return undefined
    } catch (error) {
      return this.#inWords('closing the job', error)
    }
  }

  async #openSample(): Promise<BenchState> {
    const { sample, shelf } = this.#options.places
    return this.#open(await sampleCopy(sample, shelf))
  }

  async #openRecent(id: string): Promise<BenchState> {
    const job = await this.#recent.find(id)
    if (job === undefined) throw new ServiceError('That job is not on the list any more: choose another.')
    const gone = await stat(jobFile(job.folder)).then(
      () => false,
      () => true,
    )
    if (!gone) return this.#open(job.folder)
    await this.#recent.drop(job.folder)
    await this.#tellState()
    throw new ServiceError(
      `The job "${job.title}" is no longer in ${placeInWords(job.folder)}, so it was taken off the list: ` +
        'open it from where it is now.',
    )
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
    return folder === undefined ? this.#state() : this.openFolder(folder)
  }

  async #newJob({ title, unit, by, uploads }: NewJob): Promise<BenchState> {
    const ids = [...new Set(uploads)]
    const given = ids.map((id) => this.#uploads.find(id))
    const folder = await newJobFolder(this.#options.places.shelf, title)
    const remarks: string[] = []
    try {
      await createJob(folder, given, (added, doubles) => {
        remarks.push(...added.flatMap(scanRemarks), ...doubleRemarks(doubles))
        return describeNewJob(folder, added, { title, unit, by })
      })
    } catch (error) {
      await dropJobFolder(folder)
      throw error
    }
    for (const id of ids) await this.#uploads.remove(id)
    return this.#open(folder, remarks)
  }

  async #closeJob(): Promise<BenchState> {
    const trouble = await this.#putAway()
    const state = await this.#tellState()
    if (trouble !== undefined) throw new ServiceError(trouble)
    return state
  }

  async #addSheet(upload: string, by: string): Promise<AskAnswer<'add-sheet'>> {
    const given = this.#uploads.find(upload)
    try {
      return await bringInSheet(this.#job(), given, by)
    } finally {
      await this.#uploads.remove(upload)
    }
  }

  async #stopPictures(sheet: string): Promise<null> {
    this.#job().pictures.stop(sheet)
    return null
  }

  async #close(): Promise<void> {
    // Whatever was begun is finished first.
    await this.#turn
    const trouble = await this.#putAway()
    const temporary = await this.#ownTemporary?.catch(() => undefined)
    if (temporary !== undefined) await rm(temporary, { recursive: true, force: true }).catch(() => undefined)
    this.#listeners.clear()
    if (trouble !== undefined) throw new ServiceError(trouble)
  }
}
