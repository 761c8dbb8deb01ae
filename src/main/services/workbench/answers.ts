import type { AskAnswer, AskName } from '../../../contract/asks.ts'
import type { BenchState } from '../../../contract/bench-state.ts'
import type { SheetPictures } from '../../../contract/pictures.ts'
import type { ScanLook } from '../../../contract/scan-look.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import type { KeptLimits } from '../limits/kept-limits.ts'
import { ScanLocked } from '../scans/file/scan-locked.ts'
import { lookInto } from '../scans/reader/read-scan.ts'
import { ServiceError } from '../service-error.ts'
import { beginJob } from './begin-job.ts'
import { bringInSheets } from './bring-in-sheets.ts'
import type { CheckedAsk } from './check-ask.ts'
import type { CurrentJob } from './current-job.ts'
import { openRecent } from './open-recent.ts'
import type { PageThumbnails } from './page-thumbnails.ts'
import type { Passwords } from './passwords.ts'
import { plainEdit } from './plain-edit.ts'
import { unlockSheet } from './unlock-sheet.ts'
import type { Uploads } from './uploads.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

type ArgsOf<N extends CheckedAsk['name']> = Extract<CheckedAsk, { name: N }>['args']

/** What asks are answered with. */
export interface AnswersWith {
  options: WorkbenchOptions
  current: CurrentJob
  recent: RecentJobs
  uploads: Uploads
  limits: KeptLimits
  passwords: Passwords
  thumbnails: PageThumbnails
  /** Whatever opens, closes or adds a file waits for what came before. */
  inTurn: <T>(work: () => Promise<T>) => Promise<T>
  openFolder: (folder: string) => Promise<BenchState>
  openSample: () => Promise<BenchState>
}

/** Does what a window asks, once that was checked. */
export class Answers {
  readonly #with: AnswersWith

  constructor(answersWith: AnswersWith) {
    this.#with = answersWith
  }

  /** @throws ServiceError, JobError with a sentence when it can't be done */
  answer(asked: CheckedAsk): Promise<AskAnswer<AskName>> {
    switch (asked.name) {
      case 'look':
        return this.#with.current.state()
      case 'open-sample':
        return this.#with.openSample()
      case 'open-recent':
        return this.#with.inTurn(() => openRecent(this.#with.current, this.#with.recent, asked.args.recent))
      case 'choose-job':
        return this.#chooseJob()
      case 'new-job':
        return this.#with.inTurn(() => this.#beginJob(asked.args))
      case 'close-job':
        return this.#with.inTurn(() => this.#closeJob())
      case 'edit': {
        const { edit, by, place } = asked.args
        return this.#with.current.mustBeOpen(place).make({ kind: 'edit', edit: plainEdit(edit) }, by)
      }
      case 'undo':
      case 'redo':
        return this.#with.current.mustBeOpen(asked.args.place).make({ kind: asked.name }, asked.args.by)
      case 'look-into':
        return this.#lookInto(asked.args)
      case 'drop-upload':
        return this.#dropUpload(asked.args.upload)
      case 'add-sheets':
        return this.#with.inTurn(() => this.#addSheets(asked.args))
      case 'unlock':
        return this.#unlock(asked.args)
      case 'limits':
        return this.#with.limits.read()
      case 'set-limits':
        return this.#with.limits.set(asked.args.limits)
      case 'show-sheet':
        return this.#with.current.mustBeOpen().pictures.show(asked.args.sheet)
      case 'stop-pictures':
        return this.#stopPictures(asked.args.sheet)
    }
  }

  async #chooseJob(): Promise<BenchState> {
    const { chooseJobFolder } = this.#with.options
    if (chooseJobFolder === undefined) {
      throw new ServiceError(
        'This window has no dialog to choose a folder with: open the job from the command line, ' +
          'with "scantling open" and its folder.',
      )
    }
    const folder = await chooseJobFolder()
    return folder === undefined ? this.#with.current.state() : this.#with.openFolder(folder)
  }

  async #closeJob(): Promise<BenchState> {
    const trouble = await this.#with.current.close()
    const state = await this.#with.current.tellState()
    if (trouble !== undefined) throw new ServiceError(trouble)
    return state
  }

  async #beginJob(args: ArgsOf<'new-job'>): Promise<BenchState> {
    const around = {
      current: this.#with.current,
      uploads: this.#with.uploads,
      passwords: this.#with.passwords,
    }
    const state = await beginJob(
      { ...around, limits: this.#with.limits.now, shelf: this.#with.options.places.shelf },
      args,
    )
    for (const { upload } of args.uploads) this.#with.thumbnails.drop(upload)
    return state
  }

  async #lookInto({ upload, password, from = 1 }: ArgsOf<'look-into'>): Promise<ScanLook> {
    const scan = this.#with.uploads.find(upload)
    const how = { limits: this.#with.limits.now, password: password ?? scan.password }
    const look = await lookInto(scan, from, how)
    if (!look.locked) this.#with.uploads.looked(upload, password)
    return { upload, name: scan.called, ...look }
  }

  async #dropUpload(upload: string): Promise<null> {
    this.#with.thumbnails.drop(upload)
    await this.#with.uploads.remove(upload)
    return null
  }

  async #addSheets({
    upload,
    pages,
    password,
    by,
    place,
  }: ArgsOf<'add-sheets'>): Promise<AskAnswer<'add-sheets'>> {
    const given = this.#with.uploads.wanted(upload, pages, password)
    try {
      const around = { bench: this.#with.current.mustBeOpen(place), passwords: this.#with.passwords }
      const added = await bringInSheets({ ...around, limits: this.#with.limits.now }, given, by)
      await this.#dropUpload(upload)
      return added
    } catch (error) {
      if (!(error instanceof ScanLocked)) await this.#with.uploads.refused(upload)
      throw error
    }
  }

  async #unlock({ sheet, password }: ArgsOf<'unlock'>): Promise<SheetPictures> {
    const bench = this.#with.current.mustBeOpen()
    await unlockSheet(
      { bench, passwords: this.#with.passwords, limits: this.#with.limits.now },
      sheet,
      password,
    )
    return bench.pictures.show(sheet)
  }

  async #stopPictures(sheet: string): Promise<null> {
    this.#with.current.mustBeOpen().pictures.stop(sheet)
    return null
  }
}
