import { useState } from 'react'
import type { OpenedJob } from '../../contract/bench-state.ts'
import { takeOverJob } from '../bench/take-over-job.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

interface TakeOverProps {
  job: string
  lock: NonNullable<OpenedJob['lock']>
}

/** A button that takes over the lock which keeps the job from being edited, after asking. */
export function TakeOver({ job, lock }: TakeOverProps) {
  const [asking, setAsking] = useState(false)
  const [busy, setBusy] = useState(false)
  const leave = () => setAsking(false)
  const takeOver = async () => {
    setBusy(true)
    await takeOverJob(job, lock.id).finally(() => setBusy(false))
    leave()
  }
  return (
    <>
      <Button onPress={() => setAsking(true)}>Take over…</Button>
      <Dialog
        title="Take the job over?"
        open={asking}
        onClose={leave}
        actions={
          <>
            <Button onPress={leave}>Cancel</Button>
            <Button kind="danger" disabled={busy} onPress={() => void takeOver()}>
              Take it over
            </Button>
          </>
        }
      >
        <p>It is open for writing by {lock.holder}.</p>
        <p>
          If they are still at work, what they do after this is not kept here, and the job is read-only for
          them from then on. Ask them to close it, and take it over only when nobody can.
        </p>
      </Dialog>
    </>
  )
}
