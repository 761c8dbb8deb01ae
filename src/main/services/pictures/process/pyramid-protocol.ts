import { z } from 'zod'
import { reasonSchema } from '../../../../contract/reply.ts'
import { pixelSizeSchema } from '../../scans/page/pixel-size.ts'
import { blockSchema } from '../layout/block.ts'
import { tileKindSchema } from '../layout/tile-kind.ts'
import { pageInFileSchema } from '../pyramid/open-page.ts'

/** size: of the page, pixels. folder: where the pictures come */
const pageSchema = z.strictObject({ file: pageInFileSchema, size: pixelSizeSchema, folder: z.string() })

const orderSchema = z.discriminatedUnion('make', [
  /** The picture of the whole, and what is made of it. mark: what follows the name of a file that is not whole yet */
  z.strictObject({ make: z.literal('whole'), wanted: pageSchema.extend({ mark: z.string() }) }),
  z.strictObject({ make: z.literal('tiles'), wanted: pageSchema.extend({ kind: tileKindSchema }) }),
  z.strictObject({
    make: z.literal('block'),
    wanted: pageSchema.extend({ kind: tileKindSchema, block: blockSchema }),
  }),
])

/** What is made of a page in a process of its own. */
export type PyramidOrder = z.infer<typeof orderSchema>

const newsSchema = z.discriminatedUnion('kind', [
  /** How the tiles of the page are to be kept, its pixels, and what makes them; before a picture of the whole. */
  z.strictObject({
    kind: z.literal('page'),
    page: tileKindSchema,
    size: pixelSizeSchema,
    tool: z.string(),
  }),
  /** The picture of the whole is there; what is made of it follows. */
  z.strictObject({ kind: z.literal('overview') }),
  /** So many are cut. */
  z.strictObject({ kind: z.literal('tiles'), tiles: z.int().min(0) }),
])

export type PyramidNews = z.infer<typeof newsSchema>

export const PYRAMID_PROTOCOL = {
  order: orderSchema,
  news: newsSchema,
  /** Why not, as the end of a sentence. */
  refusal: z.strictObject({ because: reasonSchema }),
}

/** The files of a block's tiles, below its folder; of other orders none. */
export const madeFilesSchema = z.array(z.string())
