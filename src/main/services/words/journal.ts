import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'

/** What is wrong with a line of a journal: goes on from its place, without a stop. */
const OF_A_LINE = {
  'journal.not-json': () => 'this is not a line of JSON',
  'journal.no-number': () => 'the line has no edit number "n"',
  'journal.no-author': () => 'the line does not say who made the edit and when ("by", "at")',
  'journal.edits-missing': (p: { n: number; after: number }) =>
    `edit ${p.n} follows edit ${p.after}, so edits are missing`,
  'journal.edit-not-applied': (p: { n: number; problem: AnyReason }, say) =>
    `edit ${p.n} can't be applied (${withoutStop(say(p.problem))})`,
} as const satisfies Catalogue

/** What is said of the journal of a job folder of the form before. */
export const JOURNAL_WORDS = {
  ...OF_A_LINE,
  'journal.bad-line': (p: { path: string; line: number; problem: AnyReason }, say) =>
    `${p.path}, line ${p.line}: ${say(p.problem)}, so the job is not opened and nothing was changed; keep a copy of the folder, then repair that line or take the folder from a backup.`,
  'journal.torn-line': (p: { path: string; line: number; begins: string }) =>
    `The last line of ${p.path} (line ${p.line}) was not completely written and is set aside: it begins "${p.begins}".`,
  'journal.not-plain': (p: { path: string }) =>
    `${p.path} is not a plain file, so the job is not opened: put the journal itself there.`,
  'journal.not-read': (p: { path: string; cause: AnyReason }, say) =>
    `${p.path} can't be read because ${say(p.cause)}.`,
} as const satisfies Catalogue
