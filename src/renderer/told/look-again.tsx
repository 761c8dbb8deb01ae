import { useState } from 'react'
import { lookAgainAt } from '../bench/take-over-job.ts'
import { Button } from '../parts/button.tsx'

/** A button that has a job read anew which can only be looked at. @param free nobody else has it, so it can be written to */
export function LookAgain({ job, free }: { job: string; free: boolean }) {
  const [busy, setBusy] = useState(false)
  const look = async () => {
    setBusy(true)
    await lookAgainAt(job).finally(() => setBusy(false))
  }
  return (
    <Button disabled={busy} onPress={() => void look()}>
      {free ? 'Open for writing' : 'Look again'}
    </Button>
  )
}
