import { z } from 'zod'

/** How the tiles of a page are kept. */
export const tileKindSchema = z.strictObject({
  /** `png` keeps every grey value; `jpeg` comes near, and is for colour only. */
  type: z.enum(['png', 'jpeg']),
  /** Whether the tiles of full size have the very values of the scan. */
  exact: z.boolean(),
})

export type TileKind = z.infer<typeof tileKindSchema>
