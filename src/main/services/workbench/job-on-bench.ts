import { randomUUID } from 'node:crypto'
import { isDeepStrictEqual } from 'node:util'
import type { Committed, OpenedJob, ScanState } from '../../../contract/bench-state.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { systemCause } from '../files/system-reason.ts'
import type { Acknowledged, JobSession } from '../job-folder/job-session.ts'
import { offeredTakeOver } from '../job-folder/lock/offered-take-over.ts'
import { openJob } from '../job-folder/open-job.ts'
import type { EditRequest } from '../job-folder/session-state.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { Pictures } from '../pictures/pictures.ts'
import type { JobFigures } from '../reading/job-figures.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { holderInWords } from '../words/holder-in-words.ts'
import { inWords, reason, type ServiceReason } from '../words/services-words.ts'
import { FolderWatch } from './folder-watch.ts'

/** Milliseconds without an edit after which job.json is written anew. */
export const QUIET = 20_000

export interface BenchedJob {
  /** What windows tell it from another by. */
  id: string
  session: JobSession
  pictures: Pictures
  figures: JobFigures
  sample: boolean
  /** What a person should be told besides what the session says. */
  remarks: readonly string[]
  now: () => Date
  quiet: number
  /** Who is at work; empty where that is not known. */
  person: () => Promise<string>
  /** Called when edits came to disk. */
  committed: (committed: Committed) => void
  /** Called when something else about the job changed: it went read-only, or could not be saved. */
  turned: () => Promise<unknown>
  log: (line: string) => void
}

const scanState = ({ sheet, state, problem }: SheetScan): ScanState => ({
  sheet,
  state,
  sentence: problem === null ? '' : inWords(problem),
})

/** The job that is open: its session, its pictures, and when it was saved. */
export class JobOnBench {
  readonly pictures: Pictures
  readonly figures: JobFigures
  readonly #start: BenchedJob
  #session: JobSession
  /** What tells the present reading of the folder from those before. */
  #reading = randomUUID()
  /** Of a job that somebody else has. */
  #watch: FolderWatch | undefined
  /** Why job.json could not be written the last time. */
  #saveTrouble: AnyReason | undefined
  #savedAt: string | null = null
  #timer: NodeJS.Timeout | undefined
  #closed = false

  constructor(start: BenchedJob) {
    this.#session = start.session
    this.pictures = start.pictures
    this.figures = start.figures
    this.#start = start
    this.#watch = this.#watchFolder()
  }

  get session(): JobSession {
    return this.#session
  }

  /** What windows tell it from another by. */
  get id(): string {
    return this.#start.id
  }

  get folder(): string {
    return this.session.folder
  }

  /** What a window is told of the job. */
  describe(): OpenedJob {
    const { session } = this
    const { job } = session
    const n = job.edition ?? 0
    const { free = false, wentOn = false } = this.#watch?.now ?? {}
    const readOnlyBecause = free ? reason('lock.given-back') : session.readOnlyBecause
    const offered = offeredTakeOver(readOnlyBecause)
    // The window shows that one as a banner of its own.
    const others = session.notices.filter(({ code }) => code !== 'job-folder.read-only')
    const notices = [...others.map(inWords), ...this.#start.remarks]
    return {
      id: this.id,
      job,
      n,
      reading: this.#reading,
      place: placeInWords(this.folder),
      sample: this.#start.sample,
      writable: session.writable,
      ...(readOnlyBecause === undefined ? {} : { readOnlyBecause: inWords(readOnly(readOnlyBecause)) }),
      ...(offered && { lock: { id: offered.takeOver, holder: holderInWords(offered.holder) } }),
      ...(free ? { free } : {}),
      ...(readOnlyBecause !== undefined && isDamage(readOnlyBecause) ? { damaged: true as const } : {}),
      ...(wentOn ? { wentOn: inWords(reason('job-folder.went-on', { n })) } : {}),
      notices: this.#saveTrouble === undefined ? notices : [...notices, inWords(this.#saveTrouble)],
      scans: session.scans.map(scanState),
      savedAt: this.#savedAt,
      ...nextSteps(session),
    }
  }

  /** The sheet of this id, and how its scan was found; undefined when the job has none. */
  sheet(id: string): { sheet: Sheet; scan: SheetScan | undefined } | undefined {
    const sheet = this.session.job.sheets.find((one) => one.id === id)
    return sheet && { sheet, scan: this.session.scans.find((scan) => scan.sheet === id) }
  }

  /** @throws ServiceError when nothing can be edited. */
  mustBeWritable(): void {
    const { readOnlyBecause } = this.session
    if (readOnlyBecause !== undefined) throw new ServiceError(readOnly(readOnlyBecause))
  }

  /**
   * Makes an edit, or a step back or forth.
   * @returns what is on disk then
   * @throws JobError, ServiceError as JobSession; the job is then as it was
   */
  async make(request: EditRequest, by: string): Promise<Committed> {
    this.mustBeWritable()
    let done: Acknowledged
    try {
      done = await this.session.make(request, by)
    } catch (error) {
      if (this.#closed || this.session.writable) throw error
      // Before the answer, so that a window knows by then why it can only look on.
      await this.#start.turned()
      this.mustBeWritable()
      throw error
    }
    const committed = this.#committedBy(done)
    this.#saveWhenQuiet()
    this.#start.committed(committed)
    return committed
  }

  /**
   * Opens the folder for writing, taking over the lock that keeps it from being edited; its pictures go on.
   * @param lock as it was told of
   * @throws ServiceError when it is not that lock, or not any more: read-only then, for whatever the reason is now
   */
  async takeOver(lock: string): Promise<void> {
    const before = this.#session
    if (offeredTakeOver(before.readOnlyBecause)?.takeOver === lock) {
      this.#take(await this.#open(lock))
      await before.close()
    }
    const because = this.#session.readOnlyBecause
    if (because !== undefined) throw new ServiceError(reason('lock.not-taken-over', { because }))
  }

  /**
   * Reads a job anew that can only be looked at, and opens it for writing where that can be; its pictures go on.
   * @throws ServiceError when it can't be read any more: what was read before stays to be looked at
   */
  async lookAgain(): Promise<void> {
    const before = this.#session
    if (before.writable) return
    // A job that went read-only while it was open holds its folder still, and would keep itself out.
    await before.close()
    this.#take(await this.#open())
  }

  /** Looks at what became of a folder that somebody else has, sooner than it would by itself. */
  async lookAtFolder(): Promise<void> {
    await this.#watch?.look()
  }

  /**
   * Stops making pictures and reading figures, saves and gives the folder back.
   * @throws ServiceError when job.json could not be written; every acknowledged edit is in the history then
   */
  async close(): Promise<void> {
    this.#closed = true
    clearTimeout(this.#timer)
    this.#watch?.end()
    await this.figures.close()
    await this.pictures.close()
    await this.session.close()
  }

  async #open(takeOver?: string): Promise<JobSession> {
    const { now, person } = this.#start
    return openJob(this.folder, { mode: 'write', now, takeOver, person: await person() })
  }

  #take(session: JobSession): void {
    this.#session = session
    this.#reading = randomUUID()
    this.#saveTrouble = undefined
    this.#watch?.end()
    this.#watch = this.#watchFolder()
  }

  #watchFolder(): FolderWatch | undefined {
    const { job, readOnlyBecause } = this.#session
    if (readOnlyBecause === undefined || !OF_OTHERS.has(readOnlyBecause.code)) return undefined
    return new FolderWatch(this.folder, job.edition ?? 0, () => void this.#start.turned())
  }

  #committedBy(done: Acknowledged): Committed {
    const { scans } = this.session
    this.#savedAt = this.#start.now().toISOString()
    const edits = done.introduced === undefined ? [done] : [done.introduced, done]
    return {
      edits: edits.map(({ n, edit }) => ({ n, edit })),
      name: done.name,
      savedAt: this.#savedAt,
      ...nextSteps(this.session),
      scans: scans.map(scanState),
    }
  }

  #saveWhenQuiet(): void {
    clearTimeout(this.#timer)
    // An edit that was under way comes to disk while the job closes, which saves it.
    if (this.#closed) return
    this.#timer = setTimeout(() => void this.#save(), this.#start.quiet)
    this.#timer.unref()
  }

  async #save(): Promise<void> {
    try {
      await this.session.save()
      this.#saveTrouble = undefined
    } catch (error) {
      if (this.#closed) return
      const trouble = error instanceof ScantlingError ? error.reason : systemCause(error)
      this.#start.log(`saving failed: ${inWords(trouble)}`)
      if (this.session.writable) this.#saveWhenQuiet()
      // Why nothing can be written any more is said once, as that.
      const told = this.session.writable ? trouble : undefined
      if (told !== undefined && isDeepStrictEqual(this.#saveTrouble, told)) return
      this.#saveTrouble = told
      void this.#start.turned()
    }
  }
}

/** What can be undone and made again next, and who made it. */
function nextSteps({
  undoes,
  redoes,
}: JobSession): Pick<Committed, 'undoName' | 'undoBy' | 'redoName' | 'redoBy'> {
  return {
    ...(undoes === undefined ? {} : { undoName: undoes.name, undoBy: { by: undoes.by, at: undoes.at } }),
    ...(redoes === undefined ? {} : { redoName: redoes.name, redoBy: { by: redoes.by, at: redoes.at } }),
  }
}

/** Why a job can only be looked at that somebody else has. */
const OF_OTHERS: ReadonlySet<string> = new Set<ServiceReason['code']>([
  'lock.held',
  'lock.held-out-of-sight',
  'lock.held-by-nobody-known',
])

/** Whether a job is kept from being edited by what its files hold, and by nobody who has it. */
const isDamage = ({ code }: AnyReason): boolean => /^(?:job-file|history)\./.test(code)

const readOnly = (because: AnyReason): ServiceReason =>
  reason('job-folder.read-only', { folder: null, because })
