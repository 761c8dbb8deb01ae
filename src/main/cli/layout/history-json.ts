import type { HistoryEntry } from '../../../core/job/history/history-of.ts'
import type { ThingNames } from '../../../core/job/history/known-names.ts'
import { sayEntry } from '../../../core/job/history/say-change.ts'
import type { Began } from '../../services/job-folder/history-back.ts'
import { inWords } from '../words/cli-words.ts'

/** The history of a job for programs: writes each entry as one JSON object on a line of its own. */
export function historyJson(names: ThingNames): (entries: readonly (HistoryEntry | Began)[]) => string {
  return (entries) => entries.map((entry) => written(entry, names)).join('')
}

function written(entry: HistoryEntry | Began, names: ThingNames): string {
  const { n, at, by } = entry
  const who = by === undefined ? undefined : names.nameOf({ kind: 'person', id: by })
  return `${JSON.stringify({ n, at, by, who, ...rest(entry, names) })}\n`
}

function rest(entry: HistoryEntry | Began, names: ThingNames): object {
  if ('began' in entry) {
    const { dimensions, marks, views, sheets } = entry.began
    const began = {
      dimensions: dimensions.length,
      marks: marks.length,
      views: views.length,
      sheets: sheets.length,
    }
    return { began, anew: entry.anew, carried: entry.carried }
  }
  const { n, name, undoes, redoes, changes } = entry
  const then = names.asOf(n)
  const words = sayEntry(entry, names).map(inWords)
  return {
    name,
    undoes,
    redoes,
    changes: changes.map(({ thing, verb, fields }, i) => ({
      thing,
      called: then.nameOf(thing),
      did: verb,
      fields,
      words: words[i],
    })),
  }
}
