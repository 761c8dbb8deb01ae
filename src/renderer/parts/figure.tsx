import './figure.css'
import { Fragment } from 'react'
import { type FigureRun, figureRuns } from './figure-runs.ts'

/** A figure as a draughtsman sets it, fractions stacked. Read aloud, copied and searched, it is its plain text. */
export function Figure({ text }: { text: string }) {
  return (
    <span className="figure" data-figure={text}>
      <span className="figure-plain">{text}</span>
      <span className="figure-set" aria-hidden="true">
        {figureRuns(text).map((run, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the runs of a text are their places in it
          <Fragment key={place}>{set(run)}</Fragment>
        ))}
      </span>
    </span>
  )
}

function set(run: FigureRun) {
  if ('text' in run) return run.text
  return (
    <>
      {run.whole}
      <span className="figure-fraction">
        <span className="figure-numerator">{run.numerator}</span>
        <span className="figure-denominator">{run.denominator}</span>
      </span>
    </>
  )
}
