import './visually-hidden.css'
import type { ReactNode } from 'react'

/** Words for those who hear the window; nobody sees them. */
export function VisuallyHidden({ children }: { children: ReactNode }) {
  return <span className="visually-hidden">{children}</span>
}
