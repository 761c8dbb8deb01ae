import { useBench } from './bench-store.ts'
import { isSaidAbove } from './said-above.ts'
import { takeBench } from './store-sync.ts'
import { ask, tellRefusal, theHost } from './the-host.ts'

/** Has a job read anew that can only be looked at, to go on in it where that can be; else the person is told why not, unless that stands above the bench. */
export async function lookAgainAt(job: string): Promise<void> {
  const reply = await theHost().ask('look-again', { job })
  if (reply.ok) takeBench(reply.answer)
  else if (!isSaidAbove(useBench.getState().opened, reply.sentence)) tellRefusal(reply)
}

/**
 * Has the lock taken over that keeps the job from being edited; where it is not, the person is told why.
 * @param lock what the host named it by when it told of it
 */
export async function takeOverJob(job: string, lock: string): Promise<void> {
  const state = await ask('take-over', { job, lock })
  if (state !== undefined) takeBench(state)
}
