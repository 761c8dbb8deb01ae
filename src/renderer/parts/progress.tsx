import './progress.css'
import type { ReactNode } from 'react'
import { Label, ProgressBar } from 'react-aria-components'

/** How far work is. `done`: 0 to 1. */
export function Progress({ name, done, children }: { name: string; done: number; children?: ReactNode }) {
  return (
    <ProgressBar className="progress" value={100 * done}>
      {({ percentage = 0 }) => (
        <>
          <Label className="progress-name">{name}</Label>
          <span className="progress-share">{Math.floor(percentage)} %</span>
          {children ?? <span />}
          <div className="progress-track">
            <div className="progress-done" style={{ width: `${percentage}%` }} />
          </div>
        </>
      )}
    </ProgressBar>
  )
}
