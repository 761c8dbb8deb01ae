import './budget-bar.css'
import { useId } from 'react'
import { budgetSegments, percentage } from './budget-segments.ts'

interface BudgetBarProps {
  /** Shares of the variance that sum to 1. */
  budget: readonly { source: string; share: number }[]
}

/** A hatch each, told apart without colours: blank, strokes one way, the other, crossed, level, dotted. */
const HATCHES = ['', 'M0 6L6 0', 'M0 0L6 6', 'M0 6L6 0M0 0L6 6', 'M0 3H6', 'M3 3h.01'] as const

/** An uncertainty budget as a bar, largest share first, with what each part stands for. */
export function BudgetBar({ budget }: BudgetBarProps) {
  const id = useId()
  const segments = budgetSegments(budget)
  let from = 0
  return (
    <figure className="budget-bar">
      <svg className="budget-bar-drawn" aria-hidden="true" focusable="false">
        <defs>
          {segments.map(({ hatch }) => (
            <pattern key={hatch} id={`${id}-${hatch}`} width="6" height="6" patternUnits="userSpaceOnUse">
              <Hatch hatch={hatch} />
            </pattern>
          ))}
        </defs>
        {segments.map(({ source, share, hatch }) => {
          const start = from
          from += share
          return (
            <rect
              key={source}
              x={`${start * 100}%`}
              width={`${share * 100}%`}
              height="100%"
              fill={`url(#${id}-${hatch})`}
              className="budget-bar-segment"
            />
          )
        })}
      </svg>
      <table className="budget-bar-legend">
        <caption className="budget-bar-caption">What makes it uncertain, and its share</caption>
        <thead className="budget-bar-heads">
          <tr>
            <th scope="col">Source</th>
            <th scope="col">Share</th>
          </tr>
        </thead>
        <tbody>
          {segments.map(({ source, share, hatch }) => (
            <tr key={source}>
              <th scope="row">
                <svg className="budget-bar-key" aria-hidden="true" focusable="false">
                  <rect
                    width="100%"
                    height="100%"
                    fill={`url(#${id}-${hatch})`}
                    className="budget-bar-segment"
                  />
                </svg>
                <span>{source}</span>
              </th>
              <td>{percentage(share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  )
}

function Hatch({ hatch }: { hatch: number }) {
  return (
    <>
      <rect width="6" height="6" className={`budget-bar-tint budget-bar-tint-${hatch}`} />
      <path d={HATCHES[hatch] ?? ''} className={`budget-bar-hatch budget-bar-tint-${hatch}`} />
    </>
  )
}
