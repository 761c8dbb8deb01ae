import { type Reply, refusedSchema } from '../../contract/reply.ts'
import { REQUESTS, type RequestName } from '../../contract/requests.ts'
import { type ScanReply, scanReplySchema } from '../../contract/scan-upload.ts'
import { notUnderstood } from './own-refusals.ts'

/** What came back of a request, seen to be an answer to it or a refusal; a refusal of our own when it is neither. */
export function readAnswer<N extends RequestName>(name: N, value: unknown): Reply<N> {
  if (typeof value === 'object' && value !== null && 'ok' in value) {
    if (value.ok === true && 'answer' in value) {
      const read = REQUESTS[name].answer.safeParse(value.answer)
      if (read.success) return { ok: true, answer: read.data } as Reply<N>
    }
    const refused = refusedSchema.safeParse(value)
    if (refused.success) return refused.data
  }
  return notUnderstood
}

/** The same for the bytes of a scan, or a piece of them. */
export function readScanReply(value: unknown): ScanReply {
  const read = scanReplySchema.safeParse(value)
  return read.success ? read.data : notUnderstood
}
