import { z } from 'zod'
import type { AnyReason } from '../core/words/reason.ts'
import type { RequestAnswer, RequestName } from './requests.ts'

/** Why something was refused: programs go by the code and its parts. */
export const reasonSchema = z.strictObject({
  code: z.string(),
  parts: z.record(z.string(), z.unknown()),
  names: z.record(z.string(), z.string()).optional(),
}) as unknown as z.ZodType<AnyReason>

/** What comes back of something that was not done. */
export const refusedSchema = z.strictObject({
  ok: z.literal(false),
  reason: reasonSchema,
  /** The reason in words: what happened, what was kept and what to do. */
  sentence: z.string(),
})

export type Refused = z.infer<typeof refusedSchema>

/** What comes back of a request. */
export type Reply<N extends RequestName = RequestName> = { ok: true; answer: RequestAnswer<N> } | Refused
