import { labelOfId } from '../../core/job/ids/label.ts'
import { labelIn } from '../../core/job/ids/labels-of-job.ts'
import type { Evidence, Job } from '../../core/job/model/types.ts'
import { measureOf } from '../../core/words/measure-word.ts'
import { percentage } from '../parts/budget-segments.ts'

/** What a piece of evidence is made of: the figure as it stands, the view and the marks, the readings, the formula. */
export function EvidenceWords({ job, piece, listed }: EvidenceWordsProps) {
  return <p className="dimension-card-small">{wordsOf(job, piece, listed)}</p>
}

interface EvidenceWordsProps {
  job: Job
  piece: Evidence
  /** Whether what a figure could be is listed beside it. */
  listed: boolean
}

/** `marks M12, M13`; of those that have labels, `line 3, line 4`. */
function marksInWords(job: Job, ids: readonly string[]): string {
  const labels = ids.map((id) => labelIn(job, id))
  if (labels.some((label, i) => label !== ids[i])) return labels.join(', ')
  return `${labels.length === 1 ? 'mark' : 'marks'} ${labels.join(', ')}`
}

function wordsOf(job: Job, piece: Evidence, listed: boolean) {
  switch (piece.basis) {
    case 'printed': {
      const sheet = job.sheets.find(({ id }) => id === piece.sheet)
      const candidates = listed ? [] : (piece.candidates ?? [])
      const { read } = piece
      return (
        <>
          “{piece.text}”{sheet !== undefined && ` on sheet “${sheet.title}”`}
          {piece.legibility === 'doubtful' && ', hard to read'}
          {candidates.length > 0 &&
            `. It could be ${candidates.map(({ text, probability }) => `${text} (${percentage(probability).replaceAll(' ', '\u00a0')})`).join(', ')}`}
          {read !== undefined && read.text !== piece.text && `. By itself it was read as “${read.text}”`}
        </>
      )
    }
    case 'scaled': {
      const view = job.views.find(({ id }) => id === piece.view)
      const within = view === undefined ? labelOfId(piece.view) : `view “${view.name}”`
      return `${measureOf(piece.measure)} ${marksInWords(job, piece.marks)} in ${within}`
    }
    case 'found': {
      const instrument = job.instruments.find(({ id }) => id === piece.instrument)
      const { readings, worn } = piece
      return [
        `${readings.length === 1 ? 'reading' : `${readings.length} readings`}: ${readings.join('; ')}`,
        ...(instrument === undefined ? [] : [`by ${instrument.name}`]),
        ...(worn === undefined ? [] : [`allowance for wear ${worn.loss} (u ${worn.u})`]),
      ].join('; ')
    }
    case 'derived':
      return <code>{piece.formula}</code>
  }
}
