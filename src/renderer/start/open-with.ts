import type { RequestArguments, RequestName } from '../../contract/requests.ts'
import { takeBench } from '../bench/store-sync.ts'
import { ask } from '../bench/the-host.ts'

type OpeningRequest = 'open-sample' | 'open-recent' | 'choose-job' | 'new-job'

/** Asks the host to open a job, and takes it in; false when it refused, and the person has been told why. */
export async function openWith<N extends OpeningRequest & RequestName>(
  name: N,
  args: RequestArguments<N>,
): Promise<boolean> {
  const state = await ask(name, args)
  if (state === undefined) return false
  takeBench(state)
  return true
}
