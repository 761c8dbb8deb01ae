import { pyramidLevels } from '../../../../contract/picture-pyramid.ts'
import { hasSize } from '../../scans/page/same-size.ts'
import { cutBlock, cutTiles } from '../pyramid/cut-tiles.ts'
import { makeFromOverview, makeOverview } from '../pyramid/make-whole.ts'
import { lookAtPage } from '../pyramid/open-page.ts'
import type { PyramidNews, PyramidOrder } from './pyramid-protocol.ts'

/** Makes what is wanted, and tells how far it is. @returns the tiles' files of a block; else none */
export async function makePictures(
  { make, wanted }: PyramidOrder,
  tell: (news: PyramidNews) => void,
): Promise<string[]> {
  const levels = pyramidLevels(wanted.size.width, wanted.size.height)
  if (make === 'block') return cutBlock({ ...wanted, levels })
  if (make === 'tiles') {
    await cutTiles({ ...wanted, levels }, (tiles) => tell({ kind: 'tiles', tiles }))
    return []
  }
  const { kind, size, tool } = await lookAtPage(wanted.file)
  tell({ kind: 'page', page: kind, size, tool })
  if (!hasSize(size, wanted.size)) return []
  await makeOverview({ ...wanted, kind })
  tell({ kind: 'overview' })
  await makeFromOverview({ ...wanted, kind })
  return []
}
