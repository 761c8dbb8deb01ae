import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { howToRaise, limitInWords } from './limits-in-words.ts'

/** What the workbench says to whoever asks something of it. */
export const WORKBENCH_WORDS = {
  // Requests
  /** name: null where it is no text. */
  'request.unknown': (p: { name: string | null; type: string }) =>
    `The window asked for ${p.name === null ? `a name that is a ${p.type}` : `"${p.name}"`}, which is nothing that can be asked.`,
  'request.malformed': (p: { name: string; problem: string }) =>
    `The window asked for "${p.name}" in a form that is not understood (${p.problem}); nothing was changed.`,
  'workbench.closed': () => 'The workbench is closed: start it again.',
  'workbench.fault': () =>
    'A fault in the program kept it from doing that; whatever was shown as saved is in the job folder. Please report it, and try again.',
  'workbench.no-folder-dialog': () =>
    'This window has no dialog to choose a folder with: open the job from the command line, with "scantling open" and its folder.',

  // Which job
  'workbench.no-job': () => 'No job is open: open one first.',
  /** place: null where the job is not known here. */
  'workbench.another-job': (p: { place: string | null }) =>
    `The job ${p.place === null ? 'that this was meant for' : `in ${p.place}`} is no longer the one that is open, so nothing was done: open it again and do this anew.`,
  'workbench.no-such-thing': (p: { kind: string; id: string }, say) =>
    `There is no ${say.quotedItem(p.kind, p.id)} in the job that is open: it was renamed or removed.`,
  'recent.not-listed': () => 'That job is not on the list any more: choose another.',
  'recent.no-job-there': (p: { place: string }) =>
    `There is no job in ${p.place} any more: choose another folder.`,
  'recent.gone': (p: { title: string; place: string }) =>
    `The job "${p.title}" is no longer in ${p.place}, and was not found below your home folder: say where it is, or take it off the list.`,
  'recent.moved': (p: { title: string; place: string; found: string }) =>
    `The job "${p.title}" was moved from ${p.place} and found in ${p.found}.`,

  // Folders to choose among
  'folders.not-told': () => 'That folder is not known here any more: begin again at your home folder.',
  'folders.outside': () => 'Only folders below your home folder are shown: choose one of those.',
  'folders.not-read': (p: { place: string; cause: AnyReason }, say) =>
    `The folder ${p.place} can't be looked into because ${say(p.cause)}: choose another.`,
  'workbench.no-such-sheet': () => 'The job has no such sheet any more: choose another.',
  'workbench.scan-not-there': (p: { scan: string; sheet: string }, say) =>
    `The scan ${p.scan} of ${say.item('sheet', p.sheet)} is not there: put it back into the job's scans folder.`,

  // Who is at work
  'person.not-kept': (p: { name: string; path: string; cause: AnyReason }, say) =>
    `That ${p.name} is at work could not be kept in ${p.path} because ${say(p.cause)}: it holds until this window is closed.`,

  // Folders
  'shelf.no-folder': (p: { shelf: string; cause: AnyReason }, say) =>
    `No folder for the job can be made in ${p.shelf} because ${say(p.cause)}: put that right and try again.`,
  'shelf.name-taken': (p: { name: string; shelf: string }) =>
    `There is a folder "${p.name}" in ${p.shelf} already: call this job something else, or open that one.`,
  'sample.not-copied': (p: { folder: string; cause: AnyReason }, say) =>
    `The sample job can't be copied to ${p.folder} because ${say(p.cause)}: put that right and try again.`,
  'temporary.unusable': (p: { folder: string; cause: AnyReason }, say) =>
    `The folder for temporary files ${p.folder} can't be used because ${say(p.cause)}: put that right and try again.`,

  // Scans that are handed over
  'upload.too-many': (p: { most: number; called: string }) =>
    `${p.most} scans wait to be brought in already: make a job of them before you hand over "${p.called}".`,
  'upload.gone': () => 'That scan is not here any more: hand it over again.',
  'upload.too-large': (p: { called: string; largest: number }) =>
    `The scan "${p.called}" is larger than ${limitInWords('bytes', p.largest)}, the most that is taken in: save it with compression, or in parts, or ${howToRaise('bytes')}.`,
  'upload.empty': (p: { called: string }) => `The scan "${p.called}" is empty: scan or copy it again.`,
  'upload.not-kept': (p: { called: string; cause: AnyReason }, say) =>
    `The scan "${p.called}" could not be kept because ${say(p.cause)}: make room and hand it over again.`,
  'upload.not-whole': (p: { called: string }) =>
    `The scan "${p.called}" did not arrive whole: hand it over again.`,
} as const satisfies Catalogue
