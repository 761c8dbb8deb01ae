import type { Edit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { systemCause } from '../files/system-reason.ts'
import { lockFile } from '../job-layout/job-layout.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { changedWhileOpen } from './changed-while-open.ts'
import { ChangedByAnother, FolderBroken } from './history/history-file.ts'
import type { JobFile } from './history/job-file.ts'
import type { KeptHistory } from './history/kept-history.ts'
import type { LineRef } from './history/kept-line.ts'
import { rescue } from './history/rescue.ts'
import { snapshotText } from './history/snapshot.ts'
import type { Step } from './history/undo-stacks.ts'
import { releaseLock, stillHeld } from './lock/acquire-lock.ts'
import type { LockHolder } from './lock/lock-holder.ts'
import { nameHolder } from './lock/name-holder.ts'
import type { EditRequest, SessionState, Transition } from './session-state.ts'
import { sittings } from './sittings.ts'
import { takeRequest } from './take-request.ts'

/** An edit that is on disk. */
export interface Acknowledged {
  n: number
  /** What was done, e.g. `add mark M12`, `undo add mark M12`. */
  name: string
  /** The edit as the history has it, with who and when written in; of an undo, the edit that took the other back. */
  edit: Edit
  /** The edit before it that added whoever made it to the people of the job, when they were not among them. */
  introduced?: Acknowledged
}

/** What a session that may write holds beside the job. */
export interface WriteAccess {
  holder: LockHolder
  history: KeptHistory
  document: JobFile
  /** The line that job.json was written at. */
  savedAt: number
}

/** What undo or redo would take: its name, and who made it when. */
export interface NextStep {
  name: string
  /** The id of a person of the job, or a name. */
  by: string
  at: string
}

export interface SessionStart extends SessionState {
  folder: string
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

const nextStep = (step: Step | null): NextStep | undefined =>
  step === null ? undefined : { name: step.named.name, by: step.by, at: step.at }

const isChange = (task: Task | undefined): task is { change: Change } =>
  task !== undefined && 'change' in task

/**
 * A job folder that is open. Edits are applied in the order in which they were asked for; each promise resolves
 * only when its line of the history is on disk. Edits that wait together share one fsync.
 */
export class JobSession {
  readonly folder: string
  /** What a person should be told about this opening: dropped lines, taken-over locks, changed scans. */
  readonly notices: readonly AnyReason[]
  readonly #now: () => Date
  readonly #sittingOf = sittings()
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
    const { job, stacks, scans, tip } = start
    this.#state = { job, stacks, scans, tip }
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

  /** What undo would take back. */
  get undoes(): NextStep | undefined {
    return nextStep(this.#state.stacks.undo)
  }

  /** What redo would make again. */
  get redoes(): NextStep | undefined {
    return nextStep(this.#state.stacks.redo)
  }

  /** The name of the edit that undo would take back. */
  get undoName(): string | undefined {
    return this.undoes?.name
  }

  /** The name of the edit that redo would make again. */
  get redoName(): string | undefined {
    return this.redoes?.name
  }

  /**
   * Makes an edit. Marks, evidence and notes that it adds, changes or repeats and that do not say who made them and
   * when, say so afterwards; somebody who is not among the people of the job yet is added first, by an edit of its
   * own.
   * @param edit as `readEdit` gives it
   * @param by who makes it: the id or the name of a person of the job, or a new name; goes into the history
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

  /** Takes the newest edit back, which is an edit of its own. @param theirs also where somebody else made it */
  undo(by: string, theirs = false): Promise<Acknowledged> {
    return this.make({ kind: 'undo', theirs }, by)
  }

  /** Makes the newest undone edit again, which is an edit of its own. @param theirs also where somebody else undid it */
  redo(by: string, theirs = false): Promise<Acknowledged> {
    return this.make({ kind: 'redo', theirs }, by)
  }

  /** Has the lock say who is at work from now on, for whoever else opens the job. @throws the system's error */
  async nameHolder(person: string): Promise<void> {
    const access = this.#access
    if (access === undefined || !this.writable || access.holder.person === person) return
    access.holder = { ...access.holder, person }
    await nameHolder(lockFile(this.folder), access.holder)
  }

  /** Writes job.json anew with all acknowledged edits. */
  save(): Promise<void> {
    const refusal = this.#refusal()
    if (refusal !== undefined) return Promise.reject(refusal)
    return this.#enqueueSave()
  }

  /**
   * Finishes waiting edits, saves and gives the lock back.
   * @throws ServiceError when job.json could not be written or the lock not removed; every acknowledged edit is in the
   * history then.
   */
  async close(): Promise<void> {
    if (this.#closed) return
    this.#closed = true
    await this.#working
    const access = this.#access
    if (access === undefined) return
    const giveBack = async (): Promise<void> => {
      await access.history.close()
      await releaseLock(lockFile(this.folder), access.holder)
    }
    try {
      if (this.#readOnlyBecause === undefined && access.savedAt !== this.#state.tip.n)
        await this.#save(access)
    } catch (error) {
      // What went wrong first is what is said.
      await giveBack().catch(() => undefined)
      throw error
    }
    await giveBack()
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
    const steps = new Map<number, Step>()
    const accepted: { change: Change; acknowledged: Acknowledged }[] = []
    const making = {
      folder: this.folder,
      at: this.#now().toISOString(),
      together: state.tip.n + 1,
      sittingOf: this.#sittingOf,
      load: async (ref: LineRef, job: Job) => steps.get(ref[0]) ?? access.history.stepAt(ref, job),
    }
    const take = (taken: Transition): Acknowledged => {
      text += taken.text
      const { stacks, tip } = taken.next
      for (const step of [stacks.undo, stacks.redo]) if (step?.ref[0] === tip.n) steps.set(tip.n, step)
      return acknowledgement(taken)
    }
    for (const change of changes) {
      try {
        const { introduction, step } = await takeRequest(state, change.request, { ...making, by: change.by })
        state = step.next
        const introduced = introduction && take(introduction)
        accepted.push({ change, acknowledged: { ...take(step), ...(introduced && { introduced }) } })
      } catch (error) {
        change.reject(error)
      }
    }
    if (accepted.length === 0) return
    try {
      await this.#mustBeOurs(access)
      await access.history.append(text, state.tip)
      await this.#mustBeOurs(access)
    } catch (error) {
      const refused = await this.#wayOut(error, access)
      for (const { change } of accepted) change.reject(refused)
      return
    }
    this.#state = state
    for (const { change, acknowledged } of accepted) change.resolve(acknowledged)
  }

  /** Sees that the folder is as this session left it, and its own. @throws ChangedByAnother, FolderBroken */
  async #mustBeOurs(access: WriteAccess): Promise<void> {
    await access.history.mustBeOurs()
    await access.document.mustBeOurs()
    if (await stillHeld(lockFile(this.folder), access.holder)) return
    throw new FolderBroken(reason('lock.lost', { path: lockFile(this.folder) }))
  }

  /** What is said of a write that failed; where others changed the folder, what was acknowledged is kept beside it first. */
  async #wayOut(error: unknown, access: WriteAccess): Promise<unknown> {
    if (error instanceof FolderBroken) this.#readOnlyBecause = error.reason
    if (!(error instanceof ChangedByAnother)) return error
    const { job, tip } = this.#state
    const held = await access.history.held(tip)
    const rescued = await rescue(this.folder, job, tip, held, this.#now())
    const { path } = error.file === 'history' ? access.history : access.document
    const because = await changedWhileOpen(this.folder, { file: error.file, path }, rescued)
    this.#readOnlyBecause = because
    return new FolderBroken(because)
  }

  async #save(access: WriteAccess): Promise<void> {
    const { path } = access.document
    if (this.#readOnlyBecause !== undefined) throw this.#refusal()
    const { job, tip } = this.#state
    try {
      await access.history.ready()
      await this.#mustBeOurs(access)
      await access.document.write(snapshotText(job, tip))
      access.savedAt = tip.n
    } catch (error) {
      const refused = await this.#wayOut(error, access)
      if (refused instanceof ServiceError) throw refused
      throw new ServiceError(reason('job-file.not-written', { path, cause: systemCause(error) }))
    }
  }
}
