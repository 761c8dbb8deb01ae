import './caution.css'
import type { ReactNode } from 'react'
import { Icon } from '../../parts/icon.tsx'

/** Something a person should know before going on. */
export function Caution({ children }: { children: ReactNode }) {
  return (
    <div className="caution">
      <Icon name="caution" />
      <div>{children}</div>
    </div>
  )
}
