import { type ReactNode, useRef } from 'react'
import { useInSight } from '../../parts/use-in-sight.ts'
import { Caution } from './caution.tsx'

/** A caution that comes up under a field while that is written in: brought into sight, and nothing above it moves. */
export function CautionInSight({ children }: { children: ReactNode }) {
  const caution = useRef<HTMLDivElement>(null)
  useInSight(caution, true)
  return (
    <div ref={caution} className="caution-in-sight">
      <Caution>{children}</Caution>
    </div>
  )
}
