import { useEffect, useRef, useState } from 'react'
import type { ScanLook } from '../../contract/scan-look.ts'
import { theHost } from '../bench/the-host.ts'

/** What is known of a scan, and a way to have further pages of it looked into. */
export function useMorePages(
  begun: ScanLook,
  password: string | undefined,
): { look: ScanLook; loading: boolean; loadMore: () => void } {
  const [look, setLook] = useState(begun)
  const [loading, setLoading] = useState(false)
  /** Whether an answer is on its way or was refused: then no more is asked for. */
  const asking = useRef(false)
  const next = (look.looked.at(-1)?.page ?? 0) + 1
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was looked into is what this waits for
  useEffect(() => {
    asking.current = false
  }, [look])
  const loadMore = () => {
    if (asking.current || next > look.pages) return
    asking.current = true
    setLoading(true)
    void theHost()
      .ask('look-into', { upload: look.upload, from: next, ...(password === undefined ? {} : { password }) })
      .then((reply) => {
        setLoading(false)
        if (!reply.ok) return
        const further = reply.answer.looked.filter(({ page }) => page >= next)
        if (further.length > 0) setLook((before) => ({ ...before, looked: [...before.looked, ...further] }))
      })
  }
  return { look, loading, loadMore }
}
