import { access, readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, describe, expect, test, vi } from 'vitest'
import { LIMITS } from '../../../../src/contract/limits.ts'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import { type Block, liesIn, type TilePlace } from '../../../../src/main/services/pictures/layout/block.ts'
import { tileFile } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import type { MakePyramid } from '../../../../src/main/services/pictures/process/pyramids.ts'
import { EarlyTiles } from '../../../../src/main/services/pictures/tiles/early-tiles.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const LEVELS = pyramidLevels(10_000, 10_000)
const at = (column: number, row: number, level = 0): TilePlace => ({ level, column, row })

/** Nothing is cut yet, so that whatever is made out of turn is sooner there. */
const WAITING = { cutFor: undefined, cut: 0 }

/** On a busy machine a disk is slow. */
const PATIENT = 30_000

interface Begun {
  block: Block
  finish(files: string[]): void
  stopped: boolean
}

let tiles: EarlyTiles
afterEach(() => tiles.end())

/** Early tiles whose blocks are done when the test says so. */
async function aDesk() {
  const folder = await temporaryFolder()
  const begun: Begun[] = []
  const make: MakePyramid = (order, { signal }) => {
    if (order.make !== 'block') throw new Error('only blocks are made out of turn')
    const one: Begun = { block: order.wanted.block, finish: () => undefined, stopped: false }
    begun.push(one)
    return new Promise((resolve) => {
      one.finish = resolve
      signal.addEventListener('abort', () => {
        one.stopped = true
        resolve(null)
      })
    })
  }
  tiles = new EarlyTiles({
    page: { levels: LEVELS, limits: () => LIMITS, make },
    file: { path: 'scan', page: 1 },
    kind: { type: 'png', exact: true },
    folder,
    read: 1000,
    now: () => 0,
  })
  return { folder, begun }
}

describe('a block that is made out of turn', () => {
  test('is made for the first that is wanted, and is carried to its end while that still is', async () => {
    const { begun } = await aDesk()
    tiles.consider([at(10, 10), at(0, 0)], WAITING)
    await vi.waitFor(() => expect(begun).toHaveLength(1), PATIENT)
    tiles.consider([at(0, 0), at(10, 10)], WAITING)
    expect(begun[0]?.stopped).toBe(false)
    begun[0]?.finish([tileFile(at(10, 10), 'png')])
    await vi.waitFor(() => expect(tiles.file(at(10, 10))).toBeDefined(), PATIENT)
  })

  test('is given up when all that is wanted lies elsewhere, leaves nothing, and makes room for that', async () => {
    const { begun, folder } = await aDesk()
    tiles.consider([at(10, 10)], WAITING)
    await vi.waitFor(() => expect(begun).toHaveLength(1), PATIENT)
    const [made = ''] = await readdir(folder)
    tiles.consider([at(0, 0)], WAITING)
    expect(begun[0]?.stopped).toBe(true)
    await vi.waitFor(() => expect(access(join(folder, made))).rejects.toThrow('ENOENT'), PATIENT)
    await vi.waitFor(() => {
      tiles.consider([at(0, 0)], WAITING)
      expect(begun).toHaveLength(2)
    }, PATIENT)
    expect(liesIn(at(0, 0), begun[1]?.block ?? { level: 0, columns: [0, 0], rows: [0, 0] })).toBe(true)
  })
})

describe('a tile', () => {
  test.each<[what: string, place: TilePlace, lies: boolean]>([
    ['of the block', at(3, 5, 1), true],
    ['beside it', at(4, 5, 1), false],
    ['above it', at(3, 3, 1), false],
    ['finer, within it', at(7, 11, 0), true],
    ['finer, beside it', at(8, 11, 0), false],
    ['coarser', at(1, 2, 2), false],
  ])('%s: whether it lies in the block', (_, place, lies) => {
    expect(liesIn(place, { level: 1, columns: [2, 4], rows: [4, 6] })).toBe(lies)
  })
})
