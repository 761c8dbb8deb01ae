import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'
import { momentInWords } from './moment-in-words.ts'
import type { LeftPart, OfferPart, RescuedPart } from './reason-types.ts'

/**
 * Which job it is that does not open; and the folder in which everything acknowledged was kept, when others changed the
 * job's own while it was open.
 */
type NotOpened = {
  folder: string
  rescued?: string
}

/** What to do where a job and its history do not belong together. */
const wayOut = ({ folder, rescued }: NotOpened): string =>
  rescued === undefined
    ? `nothing was changed; put the right files back from a backup, or let "scantling mend ${folder}" say what it can go on from`
    : `nothing was changed; ${heldIn(rescued)}: let "scantling mend ${folder}" say what it can go on from, or put the right files back from a backup`

export const heldIn = (rescued: string): string =>
  `edits that were acknowledged while it was open last are in ${rescued}`

/** What is said of the history of a job. */
export const HISTORY_WORDS = {
  // Reading
  'history.not-plain': (p: { path: string }) =>
    `${p.path} is not a plain file, so the job is not opened: put the history itself there.`,
  'history.not-read': (p: { path: string; cause: AnyReason }, say) =>
    `${p.path} can't be read because ${say(p.cause)}.`,
  'history.line-not-understood': (p: { path: string; n: number; problem: AnyReason }, say) =>
    `Line ${p.n} of ${p.path} can't be told, for this program does not understand it (${withoutStop(say(p.problem))}): read it with a newer one.`,
  'history.torn': (p: { path: string; n: number; begins: string }) =>
    `What follows edit ${p.n} in ${p.path} was cut short while it was written, before it was acknowledged, and is set aside: it begins "${p.begins}".`,
  'history.alien': (p: { path: string; n: number; begins: string }) =>
    `What follows edit ${p.n} in ${p.path} is not as this program writes it: somebody or another program put it there or changed it; it is set aside: it begins "${p.begins}".`,
  'history.missing': (p: { path: string; n: number } & NotOpened) =>
    `${p.path} is gone, and job.json was written at edit ${p.n} of it, so the job is not opened: ${wayOut(p)}.`,
  'history.broken': (p: { path: string; n: number; begins: string } & NotOpened) =>
    `${p.path} is whole up to edit ${p.n}; what follows does not go on from it (it begins "${p.begins}"), though lines of it were acknowledged, so the job is not opened: ${wayOut(p)}.`,
  'history.ends-early': (p: { path: string; n: number; ends: number } & NotOpened) =>
    `job.json was written at edit ${p.n}, but ${p.path} ends with edit ${p.ends}, so the job is not opened: ${wayOut(p)}.`,
  'history.goes-another-way': (p: { path: string; n: number } & NotOpened) =>
    `${p.path} is that of another copy of this job: its edit ${p.n} is not the one that job.json was written at, so the job is not opened: ${wayOut(p)}.`,
  'history.of-another-job': (p: { path: string } & NotOpened) =>
    `${p.path} is that of another job than job.json, so the job is not opened: ${wayOut(p)}.`,
  'history.edit-not-applied': (p: { path: string; n: number; problem: AnyReason } & NotOpened, say) =>
    `Edit ${p.n} in ${p.path} can't be applied (${withoutStop(say(p.problem))}), so the job is not opened: ${wayOut(p)}.`,
  'history.no-beginning': (p: { path: string } & NotOpened) =>
    `${p.path} does not begin with the job as it stood at first, so the job is not opened: ${wayOut(p)}.`,
  'job-file.changed-outside': (p: { path: string; n: number } & NotOpened) =>
    `${p.path} was changed by hand or by another program after it was written at edit ${p.n}, and more was done in the job since, so the job is not opened: ${wayOut(p)}.`,
  'job-file.changed-at-the-end': (p: { path: string; n: number } & NotOpened) =>
    `${p.path} was changed by hand or by another program after it was written at edit ${p.n}: it is shown as it is now, and can be edited once "scantling mend ${p.folder}" has said which is to be gone on from${p.rescued === undefined ? '' : `; ${heldIn(p.rescued)}`}.`,
  'job-file.without-history': (p: { path: string } & NotOpened) =>
    `${p.path} does not say which edit of history.ndjson it was written at, so it is an older one or another program's, and the job is not opened: ${wayOut(p)}.`,

  'job-file.in-history': (p: { problem: AnyReason } & NotOpened, say) =>
    `${withoutStop(say(p.problem))}; ${p.rescued === undefined ? 'history.ndjson beside it holds every edit' : `history.ndjson is beside it, and ${heldIn(p.rescued)}`}, so "scantling mend ${p.folder}" can make job.json again.`,
  'history.gap': (p: { path: string; ends: number; n: number }) =>
    `The job is sound and opens at edit ${p.n}, but ${p.path} is whole up to edit ${p.ends} only: what was done between can't be undone or looked up.`,
  'history.none': (p: { path: string }) => `there is no ${p.path}.`,

  // Writing
  'history.not-written': (p: { path: string; cause: AnyReason }, say) =>
    `The edit was not made because ${p.path} could not be written (${say(p.cause)}); the job is as it was before: put the disk right and try again.`,
  'history.not-taken-back': (p: { path: string; cause: AnyReason; afterwards: AnyReason }, say) =>
    `The edit could not be written to ${p.path} because ${say(p.cause)}, and the half-written line could not be removed because ${say(p.afterwards)}; the job is read-only from here on: put the disk right and open it again.`,
  'history.changed-by-another': (p: { path: string } & Kept) =>
    `${p.path} was changed, replaced or removed by another program while this job was open, so nothing more is written to it; ${wayOn(p)}`,
  'job-file.changed-by-another': (p: { path: string } & Kept) =>
    `${p.path} was changed, replaced or removed by another program while this job was open, so it is not overwritten; ${wayOn(p)}`,

  // Mending
  'mend.side': (p: SidePart) => sideInWords(p),
  /** by, at: of the last edit; null where they are not known. */
  'mend.rescue': (p: {
    place: string
    n: number
    title: string
    dimensions: number
    marks: number
    by: string | null
    at: string | null
  }) =>
    `What was kept in ${p.place}: "${p.title}" as of edit ${p.n}${lastOf(p)}, ${p.dimensions} dimensions, ${p.marks} marks`,
  'mend.mended': (p: { n: number; place: string; leaves: LeftPart | null }) =>
    `The job was mended and goes on from edit ${p.n}; ${p.leaves === null ? '' : `it leaves behind ${leftInWords(p.leaves)}; `}its files as they were are in ${p.place}.`,
  'mend.not-from': (p: { file: string; problem: AnyReason; offers: readonly OfferPart[] }, say) =>
    `Nothing was changed, for ${p.file} can't be gone on from: ${withoutStop(say(p.problem))}; ${offered(p.offers)}.`,
  'mend.no-such-rescue': (p: { from: string; offers: readonly OfferPart[] }) =>
    `Nothing was changed, for there is no "${p.from}" that this job could go on from; ${offered(p.offers)}.`,
  'mend.which-rescue': (p: { from: string; names: readonly string[] }) =>
    `Nothing was changed, for several folders have what was rescued of this job: name the one to go on from, ${p.names.map((name) => `--from ${name}`).join(' or ')}.`,
  /** file: what holds it; null: the job as it opens. */
  'mend.already-held': (p: { file: string | null; rescued: string }) =>
    p.file === null
      ? `Nothing was changed: the job already holds all that the rescue ${p.rescued} holds, so nothing is to be done.`
      : `Nothing was changed: ${p.file} already holds all that the rescue ${p.rescued} holds, so go on from that: --from history.`,
  /** rescues: folders that hold what was kept of it. */
  'mend.folder-gone': (p: { folder: string; rescues: readonly string[] }) =>
    `There is no folder ${p.folder}: it was moved or removed, or is called otherwise, so nothing can be mended there; ${
      p.rescues.length === 0
        ? 'name the folder where it is now.'
        : `where it was moved to, the job needs no mending for that; where it was removed, what was kept of it is in ${p.rescues.join(' and in ')}: put the folder back from a backup first, and "scantling mend ${p.folder}" then says what it can go on from.`
    }`,
  /** by: null where it is not known who made the last edit. */
  'rescue.holds-more': (p: {
    path: string
    n: number
    by: string | null
    at: string | null
    folder: string
  }) =>
    `${p.path} holds edits of this job that it does not have itself, up to edit ${p.n}${lastOf(p)}; "scantling mend ${p.folder}" says what it can go on from, and moving that folder elsewhere ends this note.`,
} as const satisfies Catalogue

const offered = (offers: readonly OfferPart[]): string =>
  offers.length === 0
    ? 'put the right files back from a backup'
    : `what can be gone on from: ${offers.map(({ from, leaves }) => `--from ${from}${leaves === null ? '' : ` (which leaves behind ${leftInWords(leaves)})`}`).join(', ')}`

/** One of two files that a job could go on from, with what it would leave behind. */
export type SidePart = {
  readonly file: string
  readonly n: number
  readonly title: string
  readonly dimensions: number
  readonly marks: number
  readonly leaves: LeftPart | null
}

export const sideInWords = ({ file, n, title, dimensions, marks, leaves }: SidePart): string =>
  `${file}: "${title}" as of edit ${n}, ${dimensions} dimensions, ${marks} marks${leaves === null ? '' : `; going on from it leaves behind ${leftInWords(leaves)}`}`

/** Who made the last edit, and when; nothing where that is not known. */
export const lastOf = ({ by, at }: { by: string | null; at: string | null }): string =>
  by === null || at === null ? '' : ` (the last by ${by}, ${momentInWords(at)})`

/** Edits that something does not hold, and who made them. */
export function leftInWords({ count, by }: LeftPart): string {
  const edits = `${count} acknowledged edit${count === 1 ? '' : 's'}`
  return by.length === 0 ? edits : `${edits} by ${by.join(' and ')}`
}

/** From where on a history tells what was done, where what was before is gone; nothing where none is. n: its last edit. */
export function toldFrom({ n, begins }: { n: number; begins: number | null }): string {
  if (begins === null) return ''
  return begins > n
    ? `its history begins after edit ${n}, and what was done up to it can't be told or undone any more`
    : `its history begins with edit ${begins}, and what was done before that can't be told or undone any more`
}

/** What a folder holds that was kept of a job. */
export function keptIn({ path, n, begins }: RescuedPart): string {
  return begins === null
    ? `everything acknowledged is in ${path}`
    : `the job with every value as of edit ${n} is in ${path}, but ${toldFrom({ n, begins })}`
}

/** What is said where nothing could be kept. */
export const COPY_IT =
  'a copy of what is in memory could not be written anywhere, so copy what you need from the window before you close it.'

/**
 * What was kept when others changed the folder; null: none could be written. enough: the folder itself still holds all of
 * it and opens.
 */
type Kept = { folder: string; rescued: RescuedPart | null; enough: boolean }

function wayOn({ folder, rescued, enough }: Kept): string {
  if (rescued === null) return COPY_IT
  return enough
    ? `the folder still holds every acknowledged edit, so it is enough to close the job and open it again (a copy is in ${rescued.path}).`
    : `${keptIn(rescued)}: close the job, and let "scantling mend ${folder}" say what it can go on from; or put job.json and history.ndjson from there in the place of those of ${folder}.`
}
