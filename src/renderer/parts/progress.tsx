import './progress.css'
import type { ReactNode } from 'react'
import { Label, ProgressBar } from 'react-aria-components'

/** How far work is. `done`: 0 to 1. What can be done about it stands beside it, not in it: a bar has no parts. */
export function Progress({ name, done, children }: { name: string; done: number; children?: ReactNode }) {
  return (
    <div className="progress">
      <ProgressBar className="progress-bar" value={100 * done}>
        {({ percentage = 0 }) => (
          <>
            <Label className="progress-name">{name}</Label>
            <span className="progress-share">{Math.floor(percentage)} %</span>
            <div className="progress-track">
              <div className="progress-done" style={{ width: `${percentage}%` }} />
            </div>
          </>
        )}
      </ProgressBar>
      {children}
    </div>
  )
}
