import { realpath } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { HostEvent } from '../../../contract/host-event.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import type { JobSession } from '../job-folder/job-session.ts'
import { openJob } from '../job-folder/open-job.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import type { KeptLimits } from '../limits/kept-limits.ts'
import type { KeptPerson } from '../people/kept-person.ts'
import { Pictures } from '../pictures/pictures.ts'
import { pyramidProgram } from '../pictures/process/pyramid-program.ts'
import { JobFigures } from '../reading/job-figures.ts'
import { FigureReader } from '../reading/process/figure-reader.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'
import { JobOnBench, QUIET } from './job-on-bench.ts'
import type { Passwords } from './passwords.ts'
import { sentenceOf, whyNot } from './refuse.ts'
import { sampleCopyFolder } from './sample-copy.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

interface CurrentJobOptions {
  options: WorkbenchOptions
  now: () => Date
  recent: RecentJobs
  person: KeptPerson
  /** Makes a folder of this process's own, removed in the end. */
  temporary: () => Promise<string>
  limits: KeptLimits
  passwords: Passwords
  tell: (event: HostEvent) => void
  log: (line: string) => void
}

/** The one job that is open, or none: how it is opened, closed and told of. Whoever calls does so in turn. */
export class CurrentJob {
  readonly #around: CurrentJobOptions
  readonly #program: string | undefined
  readonly #reader: FigureReader
  #job: JobOnBench | null = null

  constructor(around: CurrentJobOptions) {
    this.#around = around
    this.#program = around.options.pyramidProgram ?? pyramidProgram()
    this.#reader = new FigureReader(around.options.figureProgram)
  }

  get job(): JobOnBench | null {
    return this.#job
  }

  /**
   * The job that is open.
   * @param id of the job that something is meant for; undefined: of whichever is open
   * @throws ServiceError when none is open, or another one
   */
  mustBeOpen(id?: string): JobOnBench {
    const job = this.#job
    if (job === null) throw new ServiceError(reason('workbench.no-job'))
    if (id === undefined || id === job.id) return job
    const folder = this.#around.recent.folderOf(id)
    const place = folder === undefined ? null : placeInWords(folder)
    throw new ServiceError(reason('workbench.another-job', { place }))
  }

  /** What a window is told of the host and of the job. */
  async state(): Promise<BenchState> {
    return this.#stateWith(await this.#known())
  }

  /** Tells every window how things stand. */
  async tellState(): Promise<BenchState> {
    const known = await this.#known()
    // Nothing may come between looking and telling, or a window would take an older state for the newer.
    const state = this.#stateWith(known)
    this.#around.tell({ kind: 'bench', state })
    return state
  }

  /** Tells one window how things stand and how far the pictures are, in order with what all are told. */
  async greet(heard: (event: HostEvent) => void): Promise<void> {
    const known = await this.#known()
    heard({ kind: 'bench', state: this.#stateWith(known) })
    for (const progress of this.#job?.pictures.progress() ?? []) heard({ kind: 'pictures', progress })
  }

  /**
   * Opens a job folder, closing the one before it.
   * @param remarks what a person should be told besides
   * @throws ServiceError when it can't be opened; what was open stays open, but for the same folder read-only
   */
  async open(folder: string, remarks: readonly string[] = []): Promise<BenchState> {
    const { options, now, recent, person } = this.#around
    const path = await realpath(folder).catch(() => resolve(folder))
    const again = this.#job?.folder === path
    if (again && this.#job?.session.writable) return this.state()
    // A job that went read-only while it was open holds its folder still, and would keep itself out.
    const early = again ? await this.close() : undefined
    let session: JobSession
    try {
      session = await openJob(path, { mode: 'write', now, person: await person.name() })
    } catch (error) {
      if (again) await this.tellState()
      throw error
    }
    const trouble = early ?? (await this.close())
    const sample = await realpath(sampleCopyFolder(options.places.shelf)).catch(() => undefined)
    await this.#around.limits.read()
    const limitTrouble = this.#around.limits.trouble
    const troubles = [trouble && sentenceOf(trouble), limitTrouble && inWords(limitTrouble)].filter(
      (one) => one !== undefined,
    )
    this.#job = this.#bench(session, path === sample, [...remarks, ...troubles])
    const { title, id: job } = session.job
    await recent.add({ folder: path, title, openedAt: now().toISOString(), job })
    await recent.followTo(path, job)
    options.folderOpened?.(path)
    return this.tellState()
  }

  /** Closes the job that is open. @returns what went wrong with saving it */
  async close(): Promise<AnyReason | undefined> {
    const before = this.#job
    this.#job = null
    if (before === null) return undefined
    try {
      await before.close()
      await this.#around.recent.retitle(before.folder, before.session.job.title)
      return undefined
    } catch (error) {
      return whyNot('closing the job', error, this.#around.log)
    }
  }

  /** Ends what has nothing to do once no job is opened any more. */
  end(): void {
    this.#reader.end()
  }

  /** Takes a job off the list of those that were open before, and tells every window. */
  async forget(folder: string): Promise<void> {
    await this.#around.recent.drop(folder)
    await this.tellState()
  }

  /** Keeps who is at work from now on; the lock of the job that is open says so too. @throws ServiceError when it can't be kept */
  async workAs(name: string): Promise<BenchState> {
    await this.#around.person.keep(name)
    try {
      await this.#job?.session.nameHolder(name)
    } catch (error) {
      // Others are told who it was before; the hold itself is as it was.
      whyNot('naming who holds the job', error, this.#around.log)
    }
    return this.tellState()
  }

  async #known(): Promise<Pick<BenchState, 'recent' | 'person'>> {
    const { recent, person } = this.#around
    return { recent: await recent.list(), person: await person.name() }
  }

  #stateWith(known: Pick<BenchState, 'recent' | 'person'>): BenchState {
    const { version, host, chooseJobFolder } = this.#around.options
    const opened = this.#job?.describe() ?? null
    return { version, host, ...known, choosesFolders: chooseJobFolder !== undefined, opened }
  }

  #bench(session: JobSession, sample: boolean, remarks: readonly string[]): JobOnBench {
    const { options, now, recent, person, temporary, limits, passwords, tell, log } = this.#around
    const bench: JobOnBench = new JobOnBench({
      id: recent.idOf(session.folder),
      session,
      sample,
      remarks,
      now,
      quiet: options.quiet ?? QUIET,
      person: () => person.name(),
      committed: (committed) => {
        tell({ kind: 'committed', committed })
        bench.figures.jobChanged().catch((error: unknown) => whyNot('reading figures', error, log))
      },
      turned: () => this.tellState(),
      log,
      pictures: new Pictures({
        job: session.folder,
        writable: () => bench.session.writable,
        temporary,
        sheet: (id) => bench.sheet(id),
        sheets: () => bench.session.job.sheets,
        limits: () => limits.now,
        password: (sha256) => passwords.of(sha256),
        progressed: (progress) => tell({ kind: 'pictures', progress }),
        program: this.#program,
      }),
      figures: new JobFigures({
        job: session.folder,
        sheet: (id) => bench.sheet(id),
        says: () => bench.session.job,
        temporary,
        kept: join(options.places.settings, 'readings'),
        limits: () => limits.now,
        password: (sha256) => passwords.of(sha256),
        reader: this.#reader,
        told: (news) => tell({ kind: 'readings', job: bench.id, news }),
      }),
    })
    return bench
  }
}
