import { capital } from '../../../core/words/capital.ts'
import { led } from '../../../core/words/led.ts'
import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { COPY_IT, heldIn, keptIn } from './history.ts'
import { holderInWords } from './holder-in-words.ts'
import { momentInWords } from './moment-in-words.ts'
import type { HolderPart, RescuedPart } from './reason-types.ts'

/** What lies where the lock of a job belongs, and is none. */
const IN_THE_WAY = {
  folder: 'a folder',
  link: 'a link',
  pipe: 'a named pipe',
  device: 'a device',
  socket: 'a socket',
} as const

/** What is said of a job folder: of its document, its lock and what may be done in it. */
export const JOB_FOLDER_WORDS = {
  // A folder for a new job
  'new-job.not-empty': (p: { folder: string }) =>
    `"${p.folder}" is not empty: name a new folder, or an empty one, for the job.`,
  'new-job.is-a-file': (p: { folder: string }) => `"${p.folder}" is a file: name a new folder for the job.`,
  'new-job.unusable': (p: { folder: string; cause: AnyReason }, say) =>
    `"${p.folder}" can't be used for a job because ${say(p.cause)}.`,
  'new-job.not-made': (p: { folder: string; cause: AnyReason }, say) =>
    `The job folder ${p.folder} can't be made because ${say(p.cause)}.`,

  // Opening
  'job-folder.is-a-file': (p: { folder: string }) =>
    `"${p.folder}" is a file, not a job folder: name the folder that holds job.json.`,
  /** rescued: where everything acknowledged was kept when others changed the folder while it was open. */
  'job-folder.no-job': (p: { folder: string; rescued?: string }) =>
    `"${p.folder}" is not a job folder: it holds no job.json${p.rescued === undefined ? '' : `; ${heldIn(p.rescued)}: let "scantling mend ${p.folder}" make the job of that again`}.`,
  'job-folder.not-opened': (p: { folder: string; cause: AnyReason }, say) =>
    `The job folder ${p.folder} can't be opened because ${say(p.cause)}.`,
  'job-file.not-plain': (p: { path: string }) =>
    `${p.path} is not a plain file, so it is not read: put the job document itself there.`,
  'job-file.not-read': (p: { path: string; cause: AnyReason }, say) =>
    `${p.path} can't be read because ${say(p.cause)}.`,
  'job-file.not-utf8': (p: { path: string }) => `${p.path} is not UTF-8 text.`,
  'job-file.empty': (p: { path: string }) =>
    `${p.path} is empty: take the file from a backup, or make a new job with "scantling new".`,
  'job-file.unsound': (p: { path: string; problem: AnyReason }, say) => led(`${p.path}: `, p.problem, say),

  /** Said of a job that was open. rescued: null where nothing could be kept. */
  'job-folder.gone': (p: { folder: string; rescued: RescuedPart | null }) =>
    `${p.folder} is no longer there: the folder as a whole was moved or removed while this job was open, so nothing more is written to it; if it was moved, the job is sound where it is now, with every acknowledged edit: end this program and open it there; if it was removed, ${p.rescued === null ? COPY_IT : `${keptIn(p.rescued)}: put the folder back from a backup, and let "scantling mend ${p.folder}" say what it can go on from.`}`,

  // Writing
  'job-file.not-written': (p: { path: string; cause: AnyReason }, say) =>
    `${p.path} could not be written because ${say(p.cause)}; every edit is safe in the history beside it.`,

  // Who has it
  'job-folder.closed': (p: { folder: string }) => `The job ${p.folder} is closed: open it again to edit it.`,
  /** folder: null where a person sees which job is meant. */
  'job-folder.read-only': (p: { folder: string | null; because: AnyReason }, say) =>
    led(`The job ${p.folder === null ? '' : `${p.folder} `}is open read-only: `, p.because, say),
  'job-folder.for-reading': () => 'it was opened for reading.',
  'lock.held': (p: { holder: HolderPart; path: string }) =>
    `it is open for writing by ${holderInWords(p.holder)}; they are at work on this machine; ask them to close it.`,
  'lock.held-out-of-sight': (p: { holder: HolderPart; path: string; takeOver: string }) =>
    `it is open for writing by ${holderInWords(p.holder)}; whether they still are can't be seen from here; ask them to close it, and take the lock over only when nobody can.`,
  'lock.held-by-nobody-known': (p: { path: string; takeOver: string }) =>
    `it is open for writing by ${holderInWords(null)}; when nobody has the job open, take the lock over, or delete ${p.path} and open it again.`,
  'lock.in-the-way': (p: { path: string; what: keyof typeof IN_THE_WAY }) =>
    `${p.path} is ${IN_THE_WAY[p.what]} and no lock, so the job can't be locked; when nobody has it open, remove that and open the job again.`,
  'lock.not-read': (p: { path: string; cause: AnyReason }, say) =>
    `it can't be seen whether somebody has it open, for ${p.path} can't be read because ${say(p.cause)}; put that right and open it again.`,
  'lock.not-written': (p: { cause: AnyReason }, say) =>
    `the folder can't be written because ${say(p.cause)}.`,
  'lock.not-given-back': (p: { path: string; cause: AnyReason }, say) =>
    `The job is closed, but its lock ${p.path} can't be removed because ${say(p.cause)}; once this program has ended, the lock is taken over by whoever opens the job.`,
  'lock.taken-over': (p: { holder: HolderPart }) =>
    `The job was left open by ${holderInWords(p.holder)}, a process that has ended; its lock was taken over and its acknowledged edits are here.`,
  'lock.taken-over-after-start': (p: { holder: HolderPart }) =>
    `The job was left open by ${holderInWords(p.holder)}, before this machine was started again; its lock was taken over and its acknowledged edits are here.`,
  'lock.taken-over-in-copy': (p: { holder: HolderPart }) =>
    `This folder is a copy of one that was open at the time, by ${holderInWords(p.holder)}; the lock that came along was set aside, and what is done in the one folder does not come into the other.`,
  'lock.taken-over-damaged': (p: { path: string }) =>
    `${p.path} was damaged and from before this machine was started, as a power cut leaves it; the lock was taken over and the acknowledged edits are here.`,
  /** holder: null where the lock file was damaged. */
  'lock.taken-over-when-asked': (p: { holder: HolderPart | null }) =>
    `The lock of ${holderInWords(p.holder)} was taken over, as was asked; if they are still at work, what they do after this is not kept here.`,
  /** Said to whoever asked for a lock to be taken over. */
  'lock.not-taken-over': (p: { because: AnyReason }, say) =>
    led('The job was not taken over: ', p.because, say),
  /** Said of a job that was opened to be looked at while somebody had it. */
  'lock.given-back': () => 'nobody else has it any more; open it for writing to edit it.',
  'lock.lost': (p: { path: string }) =>
    `${p.path}, which keeps others from writing while the job is open here, was removed or replaced, so somebody else may be writing; close the job, look at the folder and open it again.`,

  /** n: the last edit that is shown. */
  'job-folder.went-on': (p: { n: number }) =>
    `The job went on since it was read here: what is shown is as of edit ${p.n}. Look again to see it as it is now.`,

  // Edits
  'session.nobody-named': () => 'Say who makes this edit: a name is missing.',
  'session.nothing-to-undo': () => 'There is nothing to undo.',
  'session.nothing-to-redo': () => 'There is nothing to redo.',
  'session.of-another': (p: { kind: 'undo' | 'redo'; name: string; at: string; edit: string }) =>
    `"${p.edit}" was made by ${p.name} (${momentInWords(p.at)}), not by you, so it is not ${p.kind === 'undo' ? 'undone' : 'made again'} by accident: ask for it once more with "theirs": true if it is theirs that you mean.`,
  'session.evidence-stays': () =>
    'Evidence is never removed by an edit: use "withdraw-evidence" and say why, or undo the edit that added it.',
  'session.scan-not-sound': (p: { sheet: string; problem: AnyReason }, say) =>
    `Nothing is picked on ${say.item('sheet', p.sheet)} for now, because ${say(p.problem).replace(/^The /, 'the ')}`,

  // Accepting a scan for a sheet
  'relink.no-such-sheet': (p: { sheet: string; folder: string; sheets: readonly string[] }, say) =>
    `There is no ${say.item('sheet', p.sheet)} in the job ${p.folder}; its sheets are: ${p.sheets.length === 0 ? 'none' : p.sheets.map(say.label).join(', ')}.`,
  'relink.scan-not-there': (p: { sheet: string; scan: string; cause: AnyReason }, say) =>
    `${capital(say.item('sheet', p.sheet))} can't take the scan ${p.scan} because ${say(p.cause)}: put the file into the job's scans folder first.`,
  'relink.other-size': (
    p: {
      sheet: string
      scan: string
      width: number
      height: number
      wanted: { readonly width: number; readonly height: number }
    },
    say,
  ) =>
    `${capital(say.item('sheet', p.sheet))} can't take the scan ${p.scan}, which has ${p.width} × ${p.height} pixels and not ${p.wanted.width} × ${p.wanted.height}, so that no pick would lie where it was made: give a scan of the same size, or add a sheet for this one and pick anew.`,
} as const satisfies Catalogue
