import type { BenchState } from '../../../contract/bench-state.ts'
import type { SheetPictures } from '../../../contract/pictures.ts'
import type { RequestAnswer, RequestAnswers, RequestName, RequestRead } from '../../../contract/requests.ts'
import type { ScanLook } from '../../../contract/scan-look.ts'
import { readEdit } from '../../../core/job/edits/edit.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import type { KeptLimits } from '../limits/kept-limits.ts'
import { ScanLocked } from '../scans/file/scan-locked.ts'
import { lookInto } from '../scans/reader/read-scan.ts'
import { ServiceError } from '../service-error.ts'
import type { Glances } from '../shelf/glances.ts'
import { HomeFolders } from '../shelf/home-folders.ts'
import { listJobs } from '../shelf/list-jobs.ts'
import { reason } from '../words/services-words.ts'
import { beginJob } from './begin-job.ts'
import { bringInSheets } from './bring-in-sheets.ts'
import type { CurrentJob } from './current-job.ts'
import { lookAgain } from './look-again.ts'
import { lookAtDamage, mendKnown } from './mend-known.ts'
import { openRecent } from './open-recent.ts'
import type { PageThumbnails } from './page-thumbnails.ts'
import type { Passwords } from './passwords.ts'
import type { Requested } from './read-request.ts'
import { takeOver } from './take-over.ts'
import { tellHistory } from './tell-history.ts'
import { unlockSheet } from './unlock-sheet.ts'
import type { Uploads } from './uploads.ts'
import type { WorkbenchOptions } from './workbench-options.ts'

/** What requests are handled with. */
export interface HandledWith {
  options: WorkbenchOptions
  current: CurrentJob
  recent: RecentJobs
  uploads: Uploads
  limits: KeptLimits
  passwords: Passwords
  thumbnails: PageThumbnails
  glances: Glances
  /** The folder below which jobs are looked for. */
  home: string
  /** Whatever opens, closes or adds a file waits for what came before. */
  inTurn: <T>(work: () => Promise<T>) => Promise<T>
  openFolder: (folder: string) => Promise<BenchState>
  openSample: () => Promise<BenchState>
}

/** Does what is asked by each request, and gives what it is answered with. */
type Handlers = { [N in RequestName]: (args: RequestRead[N]) => Promise<RequestAnswers[N]> }

/**
 * Handles what a window asks, once that was read.
 * @returns does it; fails with a ServiceError or JobError when it can't be done
 */
export function handling(
  around: HandledWith,
): <N extends RequestName>(request: Requested<N>) => Promise<RequestAnswer<N>> {
  const handlers = handlersWith(around)
  return <N extends RequestName>({ name, args }: { name: N; args: RequestRead[N] }) => handlers[name](args)
}

function handlersWith(around: HandledWith): Handlers {
  const { options, current, recent, uploads, limits, passwords, thumbnails, glances, home, inTurn } = around
  const folders = new HomeFolders(recent, home)
  const jobs = (): Promise<RequestAnswer<'jobs'>> => listJobs(recent, options.places.shelf)

  const dropUpload = async (upload: string): Promise<null> => {
    thumbnails.drop(upload)
    await uploads.remove(upload)
    return null
  }

  const chooseJob = async (): Promise<BenchState> => {
    const { chooseJobFolder } = options
    if (chooseJobFolder === undefined) throw new ServiceError(reason('workbench.no-folder-dialog'))
    const folder = await chooseJobFolder()
    return folder === undefined ? current.state() : around.openFolder(folder)
  }

  const newJob = async (args: RequestRead['new-job']): Promise<BenchState> => {
    const shelf = options.places.shelf
    const now = options.now?.() ?? new Date()
    const state = await beginJob({ current, uploads, passwords, limits: limits.now, shelf, now }, args)
    for (const { upload } of args.uploads) thumbnails.drop(upload)
    return state
  }

  const closeJob = async (): Promise<BenchState> => {
    const trouble = await current.close()
    const state = await current.tellState()
    if (trouble !== undefined) throw new ServiceError(trouble)
    return state
  }

  const lookIntoUpload = async ({
    upload,
    password,
    from = 1,
  }: RequestRead['look-into']): Promise<ScanLook> => {
    const scan = uploads.find(upload)
    const how = { limits: limits.now, password: password ?? scan.password }
    const look = await lookInto(scan, from, how)
    if (!look.locked) uploads.looked(upload, password)
    return { upload, name: scan.called, ...look }
  }

  const addSheets = async ({
    upload,
    pages,
    password,
    by,
    job,
  }: RequestRead['add-sheets']): Promise<RequestAnswer<'add-sheets'>> => {
    const given = uploads.wanted(upload, pages, password)
    try {
      const bench = current.mustBeOpen(job)
      const added = await bringInSheets({ bench, passwords, limits: limits.now }, given, by)
      await dropUpload(upload)
      return added
    } catch (error) {
      if (!(error instanceof ScanLocked)) await uploads.refused(upload)
      throw error
    }
  }

  const unlock = async ({ sheet, password }: RequestRead['unlock']): Promise<SheetPictures> => {
    const bench = current.mustBeOpen()
    await unlockSheet({ bench, passwords, limits: limits.now }, sheet, password)
    return bench.pictures.show(sheet)
  }

  return {
    look: () => current.state(),
    'open-sample': () => around.openSample(),
    jobs,
    glance: ({ job }) => glances.of(job),
    'forget-job': async ({ job }) => {
      const folder = recent.folderOf(job)
      if (folder !== undefined) await current.forget(folder)
      return jobs()
    },
    'look-at-damage': ({ job }) => lookAtDamage(recent, job),
    mend: (args) => inTurn(() => mendKnown(current, recent, args, options.now?.() ?? new Date())),
    'look-in-folder': ({ folder }) => folders.look(folder),
    'open-recent': (args) => inTurn(() => openRecent(current, recent, home, args.recent)),
    'choose-job': chooseJob,
    'new-job': (args) => inTurn(() => newJob(args)),
    'take-over': ({ job, lock }) => inTurn(() => takeOver(current, job, lock)),
    'look-again': ({ job }) => inTurn(() => lookAgain(current, job)),
    'work-as': ({ name }) => inTurn(() => current.workAs(name)),
    'close-job': () => inTurn(closeJob),
    edit: async ({ edit, by, job }) =>
      current.mustBeOpen(job).make({ kind: 'edit', edit: readEdit(edit) }, by),
    undo: async ({ by, theirs = false, job }) => current.mustBeOpen(job).make({ kind: 'undo', theirs }, by),
    redo: async ({ by, theirs = false, job }) => current.mustBeOpen(job).make({ kind: 'redo', theirs }, by),
    history: async ({ of, limit, job }) => {
      const bench = current.mustBeOpen(job)
      const told = await tellHistory(bench.session, of, limit)
      await bench.lookAtFolder()
      return told
    },
    'look-into': lookIntoUpload,
    'drop-upload': ({ upload }) => dropUpload(upload),
    'add-sheets': (args) => inTurn(() => addSheets(args)),
    unlock,
    limits: () => limits.read(),
    'set-limits': (args) => limits.set(args.limits),
    'show-sheet': async ({ sheet }) => current.mustBeOpen().pictures.show(sheet),
    'stop-pictures': async ({ sheet }) => {
      current.mustBeOpen().pictures.stop(sheet)
      return null
    },
    'read-figure': async ({ job, sheet, box, angle }) =>
      current.mustBeOpen(job).figures.figure(sheet, { ...box, ...(angle === undefined ? {} : { angle }) }),
    'read-sheet': async ({ job, sheet, near }) => current.mustBeOpen(job).figures.begin(sheet, near),
    'read-with-hand': async ({ job, sheet, on }) => current.mustBeOpen(job).figures.withHand(sheet, on),
    'stop-reading': async ({ job, sheet }) => current.mustBeOpen(job).figures.stop(sheet),
    readings: async ({ job, sheet }) => current.mustBeOpen(job).figures.of(sheet),
    'read-labels': async ({ job, sheet }) => current.mustBeOpen(job).figures.labels(sheet),
  }
}
