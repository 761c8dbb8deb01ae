import { type RandomStream, randomStream } from '../../../../src/core/uncertainty/random.ts'

/** A stream for one case. The first numbers of neighbouring seeds are much alike: they are passed over. */
export function caseStream(seed: number): RandomStream {
  const stream = randomStream(seed)
  for (let i = 0; i < 32; i++) stream.uniform()
  return stream
}
