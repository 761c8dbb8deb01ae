import './card-head.css'
import { keepTogether } from '../../core/handoff/table/keep-together.ts'
import { statedValue } from '../../core/handoff/table/stated-value.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import { Figure } from '../parts/figure.tsx'
import { BasisSample } from '../table/basis-sample.tsx'
import { StatusMark } from '../table/status-mark.tsx'
import { STATUS_WORDS } from '../words/status-words.ts'
import type { CardProps } from './card-props.ts'

/** What the dimension is, its figure, and why it is that. */
export function CardHead({ dimension, row, unit }: CardProps) {
  return (
    <header className="card-head">
      <h2 className="card-head-label">{dimension.label}</h2>
      <p className="card-head-name">
        <code>{dimension.name}</code>
        {(dimension.count ?? 1) > 1 && <span> · {dimension.count} off</span>}
      </p>
      <p className="card-head-figure">{row === undefined ? '…' : <Figure text={statedValue(row, unit)} />}</p>
      {row !== undefined && (
        <>
          <p className="card-head-standing">
            <BasisSample basis={row.basis} />
            <span>{row.basis === null ? 'no basis' : basisWord(row.basis)}</span>
          </p>
          <p className="card-head-standing">
            <StatusMark status={row.status} sumOut={row.sumsOut !== undefined} />
            <span className="dimension-card-soft">{STATUS_WORDS[row.status]}</span>
          </p>
          <p className="card-head-why">{keepTogether(row.why)}</p>
          {row.restsOn !== undefined && (
            <p className="card-head-rests">Disputed below it: {row.restsOn.join(', ')}.</p>
          )}
        </>
      )}
    </header>
  )
}
