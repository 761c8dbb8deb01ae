import { calledAround, type Edit } from '../edits/edit.ts'
import type { Job } from '../model/types.ts'
import { whatIsOn } from './on-sheet.ts'

/**
 * Removes a sheet with all that is on it or rests on it, as one edit. Of a dimension the evidence goes that was printed
 * there or scaled off it; the dimension stays. A value that was adopted from such evidence is left to the rules again.
 * @param sheet its id
 */
export function removeSheet(job: Job, sheet: string): Edit {
  const { views, marks, notes, evidence } = whatIsOn(job, sheet)
  const gone = new Set(evidence.map(({ dimension, evidence: { id } }) => `${dimension} ${id}`))
  const left = job.dimensions.filter(({ name, adopt }) => gone.has(`${name} ${adopt}`))
  return {
    do: 'several',
    name: `remove ${calledAround(job)('sheet', sheet)} with all on it`,
    edits: [
      ...left.map(({ name }): Edit => ({ do: 'adopt', dimension: name })),
      ...evidence.map(
        ({ dimension, evidence: { id } }): Edit => ({ do: 'remove-evidence', dimension, id, undo: true }),
      ),
      ...notes.map(({ id }): Edit => ({ do: 'remove-note', id })),
      ...views.map(({ id }): Edit => ({ do: 'remove-view', id })),
      ...marks.map(({ id }): Edit => ({ do: 'remove-mark', id })),
      { do: 'remove-sheet', id: sheet },
    ],
  }
}

/**
 * The evidence that an edit removes along with the sheet that it came from, by dimension and id, parted by a blank: the
 * one case in which evidence does not stay.
 */
export function goesWithItsSheet(job: Job, edit: Edit): ReadonlySet<string> {
  if (edit.do !== 'several') return new Set()
  const sheets = edit.edits.flatMap((one) => (one.do === 'remove-sheet' ? [one.id] : []))
  const evidence = sheets.flatMap((sheet) => whatIsOn(job, sheet).evidence)
  return new Set(evidence.map(({ dimension, evidence: { id } }) => `${dimension} ${id}`))
}
