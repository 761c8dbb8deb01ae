import { capital } from '../../../core/words/capital.ts'
import { led } from '../../../core/words/led.ts'
import type { AnyReason, Catalogue, ReasonOf } from '../../../core/words/reason.ts'
import { speak } from '../../../core/words/speak.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'
import { lastOf, leftInWords, type SidePart, sideInWords, toldFrom } from '../../services/words/history.ts'
import type { LeftPart } from '../../services/words/reason-types.ts'
import { inWords as servicesInWords } from '../../services/words/services-words.ts'

/** What an option or an argument wants, where what is given does not do. */
const ADVICE = {
  name: 'give a name, or leave it out',
  title: 'give a title, or leave it out',
  file: 'name a file',
  sheet: 'name a sheet',
  lock: 'give the lock that the refusal named',
  'pixels-per-inch': 'give pixels per inch',
  'dots-per-inch': 'give dots per inch',
  limit: 'write NAME=NUMBER, e.g. pixels=2000000000',
  box: 'write X,Y,WIDTH,HEIGHT in pixels of the page, e.g. 1200,340,220,80',
  page: 'give the number of a page, from 1',
}

/** What an option may want. */
export type Wanted = keyof typeof ADVICE

/** Where the help is that shows how a command is used: `scantling table --help`. */
type Help = { readonly help: string }

const helped = (what: string, { help }: Help): string => `${what}; "${help}" shows how it is used.`

/** An option with a value that does not do. */
type Given = Help & { readonly option: string; readonly value: string }

const unsuitable = ({ option, value }: Given): string =>
  value.trim() === '' ? `The value of ${option} is empty` : `${option} can't be "${value}"`

const meant = (word: string | null): string => (word === null ? '' : ` (Did you mean ${word}?)`)

/** `--from job, --from history, or --from rescued`. */
function fromInWords(offers: readonly string[]): string {
  const all = offers.map((offer) => `--from ${offer}`)
  const last = all.pop() ?? ''
  return all.length === 0 ? last : `${all.join(', ')}, or ${last}`
}

const ifAny = (before: string, words: string, after = ''): string =>
  words === '' ? '' : `${before}${words}${after}`

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`

const more = (count: number): string => (count === 0 ? '' : ` (and ${count} more)`)

const USAGE = {
  'usage.unknown-command': (p: Help & { command: string; meant: string | null }) =>
    helped(`Unknown command '${p.command}'${meant(p.meant)}`, p),
  'usage.unknown-option': (p: Help & { option: string; meant: string | null }) =>
    helped(`Unknown option '${p.option}'${meant(p.meant)}`, p),
  'usage.missing-argument': (p: Help & { argument: string }) =>
    helped(`Missing required argument '${p.argument}'`, p),
  'usage.option-without-value': (p: Help & { option: string }) =>
    helped(`Option '${p.option}' argument missing`, p),
  'usage.too-many-arguments': (p: Help & { command: string; most: number; given: number }) =>
    helped(
      `Too many arguments for '${p.command}'; expected ${p.most} argument${p.most === 1 ? '' : 's'} but got ${p.given}`,
      p,
    ),
  'usage.unsuitable-value': (p: Given & { wants: Wanted }) =>
    helped(`${unsuitable(p)}; ${ADVICE[p.wants]}`, p),
  'usage.no-whole-number': (p: Given & { least: number; most: number }) =>
    helped(`${unsuitable(p)}; it takes a whole number from ${p.least} to ${p.most}`, p),
  'usage.no-such-choice': (p: Given & { choices: readonly string[] }) =>
    helped(`${unsuitable(p)}; allowed choices are ${p.choices.join(', ')}`, p),
  'usage.no-such-subject': (p: Help & { subject: string; subjects: readonly string[] }) =>
    helped(`"${p.subject}" is no subject; allowed choices are ${p.subjects.join(', ')}`, p),
  'usage.export-and-import': (p: Help) =>
    helped('--export and --import are two things: do one after the other', p),
  'usage.other': (p: Help & { says: string }) => helped(p.says, p),
  'usage.folder-and-sample': () => 'Name a job folder or give --sample, not both.',
  'usage.simulate-format': () => '--simulate answers in text or json.',
  'usage.pages-and-all-pages': () =>
    'Name pages or take all of them, not both: leave out --pages or --all-pages.',
  'usage.no-pages': (p: { pages: string }) => `"${p.pages}" names no pages: write them as in 1-3,5.`,
} as const satisfies Catalogue

const COMMANDS = {
  'cli.nothing-to-mend': (p: { folder: string }) =>
    `Nothing is wrong with the files of ${p.folder}: job.json and history.ndjson belong together.`,
  'cli.mend-side': (p: SidePart) => `${sideInWords(p)}.`,
  'cli.mend-not-from': (p: { file: string; problem: AnyReason }, say) =>
    `${p.file} can't be gone on from: ${say(p.problem)}`,
  /** by, at: of the last edit; null where they are not known. */
  'cli.mend-rescue': (p: {
    path: string
    n: number
    title: string
    dimensions: number
    marks: number
    by: string | null
    at: string | null
    begins: number | null
  }) =>
    `${p.path}, kept when others changed the folder while the job was open: "${p.title}" as of edit ${p.n}${lastOf(p)}, ${p.dimensions} dimensions, ${p.marks} marks${ifAny('; ', toldFrom(p))}.`,
  'cli.mend-how': (p: { folder: string; offers: readonly string[] }) =>
    p.offers.length === 0
      ? 'None of them can be gone on from: put the right files back from a backup. Nothing was changed.'
      : `To go on from ${p.offers.length === 1 ? 'that' : 'one of them'}: scantling mend ${p.folder} ${fromInWords(p.offers)}. What the files were is kept.`,
  'cli.mended': (p: {
    from: string
    n: number
    kept: string
    leaves: LeftPart | null
    begins: number | null
  }) =>
    `The job goes on from ${p.from}, at edit ${p.n}; ${p.leaves === null ? '' : `it leaves behind ${leftInWords(p.leaves)}; `}${ifAny('', toldFrom(p), '; ')}its files as they were are in ${p.kept}.`,
  'cli.mend-more': (p: { folder: string; offers: readonly string[] }) =>
    `What was rescued holds edits that the job does not have now. To go on from it instead: scantling mend ${p.folder} ${fromInWords(p.offers)}. What the files were is kept.`,
  'cli.password-unreadable': (p: { file: string; why: AnyReason }, say) =>
    `The password in ${p.file} can't be read because ${say(p.why)}.`,
  'cli.password-missing': (p: { file: string }) =>
    `"${p.file}" has no password on its first line: write it there.`,

  'cli.job-not-writable': (p: { folder: string; because: AnyReason }, say) =>
    led(`The job ${p.folder} can't be edited now: `, p.because, say),
  'cli.job-locked': (p: { folder: string; because: AnyReason; takeOver: string }, say) => [
    ...led(`The job ${p.folder} can't be edited now: `, p.because, say),
    `To take it over, give --take-over ${p.takeOver}.`,
  ],

  'cli.no-dimensions': (p: { folder: string }) =>
    `The job ${p.folder} has no dimensions yet, so there is no table: add some with "scantling edit ${p.folder}".`,
  'cli.scan-problem': (p: { first: AnyReason; more: number }, say) =>
    p.more === 0 ? say.sentences(p.first) : `${withoutStop(say(p.first))}${more(p.more)}.`,
  'cli.view-uncalibrated': (p: { view: string; name: string; more: number }, say) =>
    `${capital(say.item('view', p.view))} "${p.name}" can't be calibrated, so no value is scaled off it; the output says why${more(p.more)}.`,
  'cli.scan-in-list': (p: { file: string; sheet: string; state: 'missing' | 'changed'; more: number }, say) =>
    `The scan ${p.file} of ${say.item('sheet', p.sheet)} ${p.state === 'missing' ? "can't be read" : 'has changed'}${more(p.more)}; the list says more.`,

  'cli.edits-are-a-folder': (p: { file: string }) =>
    `"${p.file}" is a folder: name a file with one edit a line.`,
  'cli.edits-unreadable': (p: { file: string; why: AnyReason }, say) =>
    `The edits in ${p.file} can't be read because ${say(p.why)}.`,
  'cli.edit-not-json': () => 'this is not one JSON object on one line.',
  'cli.edit-refused': (p: { file: string | null; line: number; why: AnyReason }, say) =>
    led(`${p.file === null ? 'Standard input' : `"${p.file}"`}, line ${p.line}: `, p.why, say),

  'cli.notes-unwritable': (p: { file: string; why: AnyReason }, say) =>
    `The notes can't be written to ${p.file} because ${say(p.why)}.`,
  'cli.notes-unreadable': (p: { file: string; why: AnyReason }, say) =>
    `The notes in ${p.file} can't be read because ${say(p.why)}.`,
  'cli.notes-too-large': (p: { file: string }) =>
    `${p.file} is larger than any file of notes should be: it was not read.`,
  'cli.no-such-sheet': (p: { folder: string; sheet: string; sheets: readonly string[] }, say) =>
    `The job ${p.folder} has no sheet "${say.label(p.sheet)}": name one of ${p.sheets.map(say.label).join(', ')}.`,

  'cli.history-of-nothing': (p: { folder: string; called: string }) =>
    `Nothing in the job ${p.folder} is or was called "${p.called}": give the name of a dimension, or the label or id of a view, mark, sheet or person.`,
  'cli.history-of-several': (p: { called: string; ids: readonly string[] }) =>
    `Several things are called "${p.called}" (${p.ids.join(', ')}): give the id of the one that is meant.`,
  'cli.history-of-several-parts': (p: { called: string; parts: readonly string[] }) =>
    `Several things are called "${p.called}": give one of ${p.parts.map((part) => `"${part}"`).join(', ')}.`,
  'cli.history-of-one-unknown': () => 'Nothing is known of what was done to it.',
  /** carried: when the job was carried over from the form before; null: it was not. */
  'cli.history-began': (p: { dimensions: number; marks: number; anew: boolean; carried: string | null }) => {
    const over = p.carried === null ? '' : `; carried over from the earlier form on ${p.carried}`
    return `the history ${p.anew ? 'goes on from job.json as it was changed outside' : 'begins'}, with ${counted(p.dimensions, 'dimension')} and ${counted(p.marks, 'mark')}${over}`
  },

  'cli.boxes-unreadable': (p: { file: string; why: AnyReason }, say) =>
    `The boxes in ${p.file} can't be read because ${say(p.why)}.`,
  'cli.boxes-too-many': (p: { most: number }) =>
    `More than ${p.most.toLocaleString('en')} boxes were given: read them in several goes.`,
  /** file: null: standard input. */
  'cli.no-box': (p: { file: string | null; line: number; text: string }) =>
    `${p.file === null ? 'Standard input' : `"${p.file}"`}, line ${p.line}: "${p.text}" is no box; ${ADVICE.box}.`,
  'cli.box-refused': (p: { box: string; why: AnyReason }, say) => led(`The box ${p.box}: `, p.why, say),

  'cli.fault': (p: { message: string }) =>
    `Scantling failed by a fault of its own (${withoutStop(p.message)}); nothing more was done.`,
} as const satisfies Catalogue

/** Every reason that the command line has of its own, each with its sentence. */
const CLI = { ...USAGE, ...COMMANDS } as const

/** A reason that the command line gives. */
export type CliReason = ReasonOf<typeof CLI>

/** `inWords` says the reasons of services and core too. */
export const { reason, inWords } = speak(CLI, servicesInWords)
