import stringWidth from 'string-width'
import type { HistoryEntry } from '../../../core/job/history/history-of.ts'
import type { ThingNames } from '../../../core/job/history/known-names.ts'
import { sayEntry } from '../../../core/job/history/say-change.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import type { Began } from '../../services/job-folder/history-back.ts'
import { inWords, reason } from '../words/cli-words.ts'
import { localMoment } from './local-moment.ts'

const GAP = '  '
const NOBODY = 'somebody'

/** Columns of a moment, of the number of an edit at least, and of a name at most. */
const MOMENT = 16
const NUMBER = 4
const NAME = 24

/** A text in a column of its own: what is longer is cut, and shows that it was. */
function inColumn(text: string, width: number): string {
  let shown = text
  if (stringWidth(text) > width) {
    const letters = [...text]
    while (stringWidth(`${letters.join('')}…`) > width) letters.pop()
    shown = `${letters.join('').trimEnd()}…`
  }
  return shown + ' '.repeat(Math.max(0, width - stringWidth(shown)))
}

/** What an entry did, in one line for each change, or that the history begins there. */
function told(entry: HistoryEntry | Began, names: ThingNames): string[] {
  if (!('began' in entry)) return sayEntry(entry, names).map(inWords)
  const { dimensions, marks } = entry.began
  const counts = {
    dimensions: dimensions.length,
    marks: marks.length,
    anew: entry.anew,
    carried: entry.carried === undefined ? null : localMoment(entry.carried),
  }
  return [inWords(reason('cli.history-began', counts))]
}

const whoIn = ({ by }: HistoryEntry | Began, names: ThingNames): string =>
  plainText(by === undefined ? NOBODY : names.nameOf({ kind: 'person', id: by }))

const widest = (texts: readonly string[]): number =>
  texts.reduce((most, text) => Math.max(most, stringWidth(text)), 0)

/**
 * The history of a job for a terminal, one entry after the other: number, moment, who, and what was done.
 * @returns writes entries, in the same columns; a change stands on one line, however long
 */
export function historyText(
  job: Job,
  names: ThingNames,
): (entries: readonly (HistoryEntry | Began)[]) => string {
  let width = Math.min(NAME, widest([NOBODY, ...job.people.map(({ name }) => plainText(name))]))
  const digits = Math.max(NUMBER, String(job.edition ?? 0).length)
  const written = (entry: HistoryEntry | Began): string => {
    const { n, at } = entry
    const head = [
      (n === null ? '–' : String(n)).padStart(digits),
      inColumn(plainText(localMoment(at)), MOMENT),
      inColumn(whoIn(entry, names), width),
    ].join(GAP)
    return told(entry, names)
      .map((what) => `${head}${GAP}${plainText(what)}\n`)
      .join('')
  }
  return (entries) => {
    // Not everybody who did something is listed among the people of the job.
    const theirs = widest(entries.map((entry) => whoIn(entry, names)))
    width = Math.min(NAME, Math.max(width, theirs))
    return entries.map(written).join('')
  }
}
