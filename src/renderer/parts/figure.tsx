import './figure.css'
import { Fragment } from 'react'
import { besideValue, type FigureRun, figureRuns, spaced } from './figure-runs.ts'

/** A figure as a draughtsman sets it, fractions stacked. Read aloud, copied and searched, it is its plain text. */
export function Figure({ text }: { text: string }) {
  const { value, beside } = besideValue(text)
  return (
    <span className="figure" data-figure={text}>
      <span className="figure-plain">{text}</span>
      <span className="figure-set" aria-hidden="true">
        <span className="figure-value">{setRuns(value)}</span>
        {beside !== '' && <span className="figure-beside">{setRuns(beside)}</span>}
      </span>
    </span>
  )
}

const setRuns = (text: string) =>
  figureRuns(text).map((run, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the runs of a text are their places in it
    <Fragment key={place}>{set(run)}</Fragment>
  ))

function set(run: FigureRun) {
  if ('text' in run) return spaced(run.text)
  return (
    <span className="figure-mixed">
      {run.whole}
      <span className="figure-fraction">
        <span className="figure-numerator">{run.numerator}</span>
        <span className="figure-denominator">{run.denominator}</span>
      </span>
    </span>
  )
}
