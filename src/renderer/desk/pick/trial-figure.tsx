import './trial-figure.css'
import { statedValue } from '../../../core/handoff/table/stated-value.ts'
import type { Trial } from '../../findings/computer.ts'
import { Figure } from '../../parts/figure.tsx'
import { inWords } from '../../words/window-words.ts'

/** What picks come to before they are kept. */
export function TrialFigure({ label, trial }: { label: string; trial: Trial | null }) {
  return (
    <div className="trial-figure" aria-live="polite">
      <span className="trial-figure-label">{label}</span>
      {trial === null ? (
        <span>Working it out…</span>
      ) : trial.row === null || trial.row.value === null ? (
        <span>{trial.row?.why ?? (trial.because === null ? '' : inWords(trial.because))}</span>
      ) : (
        <span className="trial-figure-value" data-trial>
          <Figure text={statedValue(trial.row, trial.unit)} />
        </span>
      )}
    </div>
  )
}
