import { z } from 'zod'
import { reasonSchema } from '../../../../contract/reply.ts'
import { type PixelSize, pixelSizeSchema } from '../../scans/page/pixel-size.ts'
import type { Block } from '../layout/block.ts'
import { type TileKind, tileKindSchema } from '../layout/tile-kind.ts'
import type { PageInFile } from '../pyramid/open-page.ts'

/** size: of the page, pixels. folder: where the pictures come */
interface Wanted {
  file: PageInFile
  size: PixelSize
  folder: string
}

/** What is made of a page in a process of its own. */
export type PyramidOrder =
  /** The picture of the whole, and what is made of it. mark: what follows the name of a file that is not whole yet */
  | { make: 'whole'; wanted: Wanted & { mark: string } }
  | { make: 'tiles'; wanted: Wanted & { kind: TileKind } }
  | { make: 'block'; wanted: Wanted & { kind: TileKind; block: Block } }

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
  news: newsSchema,
  /** Why not, as the end of a sentence. */
  refusal: z.strictObject({ because: reasonSchema }),
}

/** The files of a block's tiles, below its folder; of other orders none. */
export const madeFilesSchema = z.array(z.string())
