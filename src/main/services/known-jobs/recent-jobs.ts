import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import pLimit from 'p-limit'
import type { RecentJob } from '../../../contract/bench-state.ts'
import { exists } from '../files/exists.ts'
import { jobFile } from '../job-layout/job-layout.ts'
import { placeInWords } from './place-in-words.ts'
import { type KnownJob, readRecent, writeRecent } from './recent-file.ts'

const MOST = 12

/**
 * The jobs that were open before, newest first. A window knows them by ids that hold for this run alone; the
 * folders stay here. Other processes keep the same list: it is read anew before each change.
 */
export class RecentJobs {
  readonly #path: string
  readonly #log: (line: string) => void
  readonly #ids = new Map<string, string>()
  #jobs: KnownJob[] | undefined
  /** One change after the other, or one would write over what another wrote since it read. */
  readonly #oneByOne = pLimit(1)

  /** @param settings folder that holds recent.json; made when it is needed */
  constructor(settings: string, log: (line: string) => void) {
    this.#path = join(settings, 'recent.json')
    this.#log = log
  }

  /** What a window is shown. */
  async list(): Promise<RecentJob[]> {
    this.#jobs ??= await readRecent(this.#path, this.#log)
    return this.#jobs.slice(0, MOST).map(({ folder, title, openedAt }) => ({
      id: this.idOf(folder),
      title,
      place: placeInWords(folder),
      openedAt,
    }))
  }

  /** The job that an id of this run stands for. */
  async find(id: string): Promise<KnownJob | undefined> {
    await this.list()
    return this.#jobs?.slice(0, MOST).find(({ folder }) => this.#ids.get(folder) === id)
  }

  /** What windows know the job in a folder by. */
  idOf(folder: string): string {
    const known = this.#ids.get(folder) ?? randomBytes(12).toString('hex')
    this.#ids.set(folder, known)
    return known
  }

  /** The folder that an id of this run stands for, whether it is on the list or not. */
  folderOf(id: string): string | undefined {
    for (const [folder, known] of this.#ids) if (known === id) return folder
    return undefined
  }

  /** Puts a job at the head of the list. */
  async add(job: KnownJob): Promise<void> {
    await this.#change((jobs) => [job, ...jobs.filter(({ folder }) => folder !== job.folder)])
  }

  /** Keeps up with a job that was given another title while it was open. */
  async retitle(folder: string, title: string): Promise<void> {
    await this.list()
    if (this.#jobs?.some((job) => job.folder === folder && job.title !== title) !== true) return
    await this.#change((jobs) => jobs.map((job) => (job.folder === folder ? { ...job, title } : job)))
  }

  /** Takes a job off the list at the places where it is no more, once it was opened at another. */
  async followTo(folder: string, job: string | undefined): Promise<void> {
    if (job === undefined) return
    await this.list()
    for (const one of this.#jobs ?? []) {
      const isElsewhere = one.job === job && one.folder !== folder
      if (isElsewhere && !(await exists(jobFile(one.folder)))) await this.drop(one.folder)
    }
  }

  async drop(folder: string): Promise<void> {
    await this.#change((jobs) => jobs.filter((job) => job.folder !== folder))
  }

  #change(change: (jobs: KnownJob[]) => KnownJob[]): Promise<void> {
    return this.#oneByOne(async () => {
      this.#jobs = change(await readRecent(this.#path, this.#log)).slice(0, MOST)
      await writeRecent(this.#path, this.#jobs, this.#log)
    })
  }
}
