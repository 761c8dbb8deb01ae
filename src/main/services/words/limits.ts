import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'

const USUAL = 'the defaults hold until they are set again'

/** What is said of the limits that a person set, and of the files of the window. */
export const LIMIT_WORDS = {
  'limits.not-set': (p: { problem: string }) => `The limits were not set: ${p.problem}.`,
  'limits.not-kept': (p: { path: string; cause: AnyReason }, say) =>
    `The limits could not be kept in ${p.path} because ${say(p.cause)}, so the old ones hold.`,
  'limits.unsound': (p: { path: string; problem: string }) =>
    `The limits in ${p.path} are not sound (${p.problem}), so ${USUAL}.`,
  'limits.not-json': (p: { path: string }) =>
    `The limits in ${p.path} can't be read because they are not JSON, so ${USUAL}.`,
  'limits.not-read': (p: { path: string; cause: AnyReason }, say) =>
    `The limits in ${p.path} can't be read because ${say(p.cause)}, so ${USUAL}.`,

  'window.not-read': (p: { folder: string; cause: AnyReason }, say) =>
    `The window's files can't be read because ${say(p.cause)}: ${p.folder}`,
  'window.not-built': () => 'The window has not been built yet: run npm run build',
} as const satisfies Catalogue
