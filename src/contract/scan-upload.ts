import { z } from 'zod'
import { refusedSchema } from './reply.ts'

/** Where a scan is sent: `scan?name=plan.tif`, by POST, the bytes as they are. */
export const SCAN_ADDRESS = 'scan'

/**
 * The desktop host takes a scan in pieces, each a POST of its own, because it shows no progress of one long POST:
 * `scan?name=plan.tif&upload=<UUID>&piece=<0…>&of=<pieces>`. Each is answered by itself. DELETE of
 * `scan?upload=<UUID>` abandons it.
 */
export const SCAN_PIECE_BYTES = 4 * 1024 * 1024

/** What comes back of a scan, or of a piece of one: its id, by which requests name it; null until the last piece is in. */
export const scanReplySchema = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), id: z.string().nullable() }),
  refusedSchema,
])

export type ScanReply = z.infer<typeof scanReplySchema>
