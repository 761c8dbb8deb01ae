import type { Edit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { writeJob } from '../../../core/job/write-job.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { replaceFile } from '../files/replace-file.ts'
import { systemCause } from '../files/system-reason.ts'
import { jobFile, lockFile } from '../job-layout/job-layout.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import type { History } from './history.ts'
import { writeJournalLine } from './journal-line.ts'
import { JournalBroken, type JournalWriter } from './journal-writer.ts'
import { releaseLock, stillHeld } from './lock/acquire-lock.ts'
import type { LockHolder } from './lock/lock-holder.ts'
import { type FileStamp, fileStamp } from './read-job-folder.ts'
import type { EditRequest, SessionState, Transition } from './session-state.ts'
import { takeRequest } from './take-request.ts'

/** An edit that is on disk. */
export interface Acknowledged {
  n: number
  /** What was done, e.g. `add mark M12`, `undo add mark M12`. */
  name: string
  /** The edit as the journal has it, with who and when written in; of an undo, the edit that took the other back. */
  edit: Edit
  /** The edit before it that added whoever made it to the people of the job, when they were not among them. */
  introduced?: Acknowledged
}

/** What a session that may write holds beside the job. */
export interface WriteAccess {
  holder: LockHolder
  journal: JournalWriter
  stamp: FileStamp
}

export interface SessionStart {
  folder: string
  job: Job
  history: History
  scans: SheetScan[]
  notices: AnyReason[]
  /** Undefined: opened read-only. */
  access?: WriteAccess
  /** Why it is read-only. */
  readOnlyBecause?: AnyReason
  now: () => Date
}

interface Change {
  request: EditRequest
  by: string
  resolve(acknowledged: Acknowledged): void
  reject(error: unknown): void
}

type Task = { change: Change } | { save: { resolve(): void; reject(error: unknown): void } }

const acknowledgement = ({ line: { n, edit }, name }: Transition): Acknowledged => ({ n, name, edit })

const isChange = (task: Task | undefined): task is { change: Change } =>
  task !== undefined && 'change' in task

/**
 * A job folder that is open. Edits are applied in the order in which they were asked for; each promise resolves
 * only when its journal line is on disk. Edits that wait together share one fsync.
 */
export class JobSession {
  readonly folder: string
  /** What a person should be told about this opening: dropped lines, taken-over locks, changed scans. */
  readonly notices: readonly AnyReason[]
  readonly #now: () => Date
  readonly #access: WriteAccess | undefined
  #state: SessionState
  #readOnlyBecause: AnyReason | undefined
  #tasks: Task[] = []
  #working: Promise<void> | undefined
  #closed = false

  constructor(start: SessionStart) {
    this.folder = start.folder
    this.notices = start.notices
    this.#now = start.now
    this.#access = start.access
    this.#readOnlyBecause = start.readOnlyBecause
    this.#state = { job: start.job, history: start.history, scans: start.scans }
  }

  /** The job with every acknowledged edit. */
  get job(): Job {
    return this.#state.job
  }

  /** How each sheet's scan was found. */
  get scans(): readonly SheetScan[] {
    return this.#state.scans
  }

  get writable(): boolean {
    return !this.#closed && this.#readOnlyBecause === undefined
  }

  /** Why nothing can be edited; undefined while it can. */
  get readOnlyBecause(): AnyReason | undefined {
    return this.#readOnlyBecause
  }

  /** The name of the edit that undo would take back. */
  get undoName(): string | undefined {
    return this.#state.history.undo?.top.name
  }

  /** The name of the edit that redo would make again. */
  get redoName(): string | undefined {
    return this.#state.history.redo?.top.name
  }

  /**
   * Makes an edit. Marks, evidence and notes that it adds, changes or repeats and that do not say who made them and
   * when, say so afterwards; somebody who is not among the people of the job yet is added first, by an edit of its
   * own.
   * @param edit as `readEdit` gives it
   * @param by who makes it: the id or the name of a person of the job, or a new name; goes into the journal
   * @throws JobError when the job would not be sound after it; ServiceError when it can't be written. The job is
   * then as it was.
   */
  edit(edit: Edit, by: string): Promise<Acknowledged> {
    return this.make({ kind: 'edit', edit }, by)
  }

  /** As `edit`, or a step back or forth. */
  make(request: EditRequest, by: string): Promise<Acknowledged> {
    const refusal = this.#refusal()
    if (refusal !== undefined) return Promise.reject(refusal)
    if (by.trim() === '') return Promise.reject(new ServiceError(reason('session.nobody-named')))
    return new Promise((resolve, reject) => {
      this.#tasks.push({ change: { request, by, resolve, reject } })
      this.#start()
    })
  }

  /** Takes the newest edit back; itself journalled as an edit. */
  undo(by: string): Promise<Acknowledged> {
    return this.make({ kind: 'undo' }, by)
  }

  /** Makes the newest undone edit again; itself journalled as an edit. */
  redo(by: string): Promise<Acknowledged> {
    return this.make({ kind: 'redo' }, by)
  }

  /** Writes job.json anew with all acknowledged edits and empties the journal. */
  save(): Promise<void> {
    const refusal = this.#refusal()
    if (refusal !== undefined) return Promise.reject(refusal)
    return this.#enqueueSave()
  }

  /**
   * Finishes waiting edits, saves what the journal holds and gives the lock back.
   * @throws ServiceError when job.json could not be written; every acknowledged edit is in the journal then.
   */
  async close(): Promise<void> {
    if (this.#closed) return
    this.#closed = true
    await this.#working
    const access = this.#access
    if (access === undefined) return
    try {
      if (this.#readOnlyBecause === undefined && !access.journal.isEmpty) await this.#save(access)
    } finally {
      await access.journal.close()
      await releaseLock(lockFile(this.folder), access.holder)
    }
  }

  #refusal(): ServiceError | undefined {
    if (this.#closed) return new ServiceError(reason('job-folder.closed', { folder: this.folder }))
    if (this.#readOnlyBecause === undefined) return undefined
    const because = this.#readOnlyBecause
    return new ServiceError(reason('job-folder.read-only', { folder: this.folder, because }))
  }

  #enqueueSave(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#tasks.push({ save: { resolve, reject } })
      this.#start()
    })
  }

  #start(): void {
    this.#working ??= this.#work()
  }

  async #work(): Promise<void> {
    // Edits asked for in the same turn are to share one fsync: let them all arrive.
    await Promise.resolve()
    for (let task = this.#tasks[0]; task !== undefined; task = this.#tasks[0]) {
      if (isChange(task)) {
        const changes: Change[] = []
        for (let next: Task | undefined = task; isChange(next); next = this.#tasks[0]) {
          changes.push(next.change)
          this.#tasks.shift()
        }
        await this.#commit(changes)
      } else {
        this.#tasks.shift()
        const access = this.#access
        try {
          if (access !== undefined) await this.#save(access)
          task.save.resolve()
        } catch (error) {
          task.save.reject(error)
        }
      }
    }
    // In the same turn as the last look at the queue, so that nothing can be queued unseen in between.
    this.#working = undefined
  }

  async #commit(changes: readonly Change[]): Promise<void> {
    const access = this.#access
    const refusal = this.#readOnlyBecause === undefined ? undefined : this.#refusal()
    if (access === undefined || refusal !== undefined) {
      for (const change of changes) change.reject(refusal)
      return
    }
    let state = this.#state
    let text = ''
    const accepted: { change: Change; acknowledged: Acknowledged }[] = []
    for (const change of changes) {
      try {
        const { introduction, step } = await takeRequest(
          this.folder,
          state,
          change.request,
          change.by,
          this.#now().toISOString(),
        )
        state = step.next
        if (introduction !== undefined) text += writeJournalLine(introduction.line)
        text += writeJournalLine(step.line)
        const introduced = introduction && acknowledgement(introduction)
        accepted.push({
          change,
          acknowledged: { ...acknowledgement(step), ...(introduced && { introduced }) },
        })
      } catch (error) {
        change.reject(error)
      }
    }
    if (accepted.length === 0) return
    try {
      await this.#mustHoldLock(access)
      await access.journal.append(text)
    } catch (error) {
      if (error instanceof JournalBroken) this.#readOnlyBecause = error.reason
      for (const { change } of accepted) change.reject(error)
      return
    }
    this.#state = state
    for (const { change, acknowledged } of accepted) change.resolve(acknowledged)
  }

  async #mustHoldLock(access: WriteAccess): Promise<void> {
    if (await stillHeld(lockFile(this.folder), access.holder)) return
    throw new JournalBroken(reason('lock.lost', { path: lockFile(this.folder) }))
  }

  async #save(access: WriteAccess): Promise<void> {
    const path = jobFile(this.folder)
    if (this.#readOnlyBecause !== undefined) throw this.#refusal()
    try {
      await this.#mustHoldLock(access)
      if ((await fileStamp(path)) !== access.stamp) {
        throw new JournalBroken(reason('job-file.changed-by-another', { path, rescued: null }))
      }
      try {
        await replaceFile(path, writeJob(this.#state.job))
      } finally {
        access.stamp = await fileStamp(path).catch(() => access.stamp)
      }
      await access.journal.clear()
    } catch (error) {
      if (error instanceof JournalBroken) this.#readOnlyBecause = error.reason
      if (error instanceof ServiceError) throw error
      throw new ServiceError(reason('job-file.not-written', { path, cause: systemCause(error) }))
    }
  }
}
