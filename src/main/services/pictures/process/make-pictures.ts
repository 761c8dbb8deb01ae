import { hasSize } from '../../scans/page/pixel-size.ts'
import { cutBlock, cutTiles } from '../pyramid/cut-tiles.ts'
import { makeFromOverview, makeOverview } from '../pyramid/make-whole.ts'
import { lookAtPage } from '../pyramid/open-page.ts'
import type { FromPyramid, ToPyramid } from './pyramid-messages.ts'

/** Makes what is wanted, and tells how far it is. */
export async function makePictures(order: ToPyramid, tell: (message: FromPyramid) => void): Promise<void> {
  if (order.make === 'tiles') return cutTiles(order.wanted, (tiles) => tell({ kind: 'tiles', tiles }))
  if (order.make === 'block') return tell({ kind: 'block', files: await cutBlock(order.wanted) })
  const { kind, size, tool } = await lookAtPage(order.wanted.file)
  tell({ kind: 'page', page: kind, size, tool })
  if (!hasSize(size, order.wanted.size)) return
  await makeOverview({ ...order.wanted, kind })
  tell({ kind: 'overview' })
  await makeFromOverview({ ...order.wanted, kind })
}
