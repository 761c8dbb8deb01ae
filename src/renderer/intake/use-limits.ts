import { useEffect, useState } from 'react'
import type { Limits } from '../../contract/limits.ts'
import { theHost } from '../bench/the-host.ts'

/** How much the host takes in; null until it has said so. */
export function useLimits(): Limits | null {
  const [limits, setLimits] = useState<Limits | null>(null)
  useEffect(() => {
    let wanted = true
    void theHost()
      .ask('limits', {})
      .then((reply) => {
        if (wanted && reply.ok) setLimits(reply.answer)
      })
    return () => {
      wanted = false
    }
  }, [])
  return limits
}
