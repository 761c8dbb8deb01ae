import type { Evidence, Job } from '../../core/job/model/types.ts'
import { percentage } from '../parts/budget-segments.ts'

/** What a piece of evidence is made of: the figure as it stands, the view and the marks, the readings, the formula. */
export function EvidenceWords({ job, piece }: { job: Job; piece: Evidence }) {
  return <p className="dimension-card-small">{wordsOf(job, piece)}</p>
}

function wordsOf(job: Job, piece: Evidence) {
  switch (piece.basis) {
    case 'printed': {
      const sheet = job.sheets.find(({ id }) => id === piece.sheet)
      const candidates = piece.candidates ?? []
      return (
        <>
          “{piece.text}”{sheet !== undefined && ` on ${sheet.title}`}
          {piece.legibility === 'doubtful' && ', hard to read'}
          {candidates.length > 0 &&
            `. It could be ${candidates.map(({ text, probability }) => `${text} (${percentage(probability).replaceAll(' ', '\u00a0')})`).join(', ')}`}
        </>
      )
    }
    case 'scaled': {
      const view = job.views.find(({ id }) => id === piece.view)
      const marks = piece.marks.length === 1 ? 'mark' : 'marks'
      return `${piece.measure} in ${view?.name ?? piece.view}, ${marks} ${piece.marks.join(', ')}`
    }
    case 'found': {
      const instrument = job.instruments.find(({ id }) => id === piece.instrument)
      const { readings, worn } = piece
      return [
        `${readings.length === 1 ? 'reading' : `${readings.length} readings`}: ${readings.join(', ')}`,
        ...(instrument === undefined ? [] : [`by ${instrument.name}`]),
        ...(worn === undefined ? [] : [`allowance for wear ${worn.loss} (u ${worn.u})`]),
      ].join('; ')
    }
    case 'derived':
      return <code>{piece.formula}</code>
  }
}
