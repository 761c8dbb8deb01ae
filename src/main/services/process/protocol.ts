import { z } from 'zod'

/**
 * What those say that work for this process: they read what strangers made, so it is checked. What an order is answered
 * with, the order's own side says.
 */
export interface Protocol {
  /** What is told while an order is done. */
  news: z.ZodType
  /** Why one was not done, where the process lives on. */
  refusal: z.ZodType
}

export type NewsOf<P extends Protocol> = z.output<P['news']>
export type RefusalOf<P extends Protocol> = z.output<P['refusal']>

const id = z.int().min(1)

/** To a process that works for this one. memory: the most bytes that it may use. */
export interface ToChild {
  id: number
  memory: number
  order: unknown
}

/** From such a process. id: of the order that it is about. */
export const fromChildSchema = z.discriminatedUnion('kind', [
  /** It listens. */
  z.strictObject({ kind: z.literal('ready') }),
  z.strictObject({ kind: z.literal('news'), id, news: z.unknown() }),
  z.strictObject({ kind: z.literal('answer'), id, answer: z.unknown() }),
  z.strictObject({ kind: z.literal('refusal'), id, refusal: z.unknown() }),
  /** It ends itself because it uses more memory than it may. */
  z.strictObject({ kind: z.literal('memory') }),
])

export type FromChild = z.infer<typeof fromChildSchema>
