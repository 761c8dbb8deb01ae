import { mkdir, rename, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../../src/contract/limits.ts'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import { cutFile } from '../../../../src/main/services/pictures/layout/picture-names.ts'
import type { TileKind } from '../../../../src/main/services/pictures/layout/tile-kind.ts'
import type { MakingEvent } from '../../../../src/main/services/pictures/making/making.ts'
import { PageTiles } from '../../../../src/main/services/pictures/tiles/page-tiles.ts'
import { isWhole } from '../../../../src/main/services/pictures/tiles/whole-file.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

const noisy = sharp({
  create: {
    width: 64,
    height: 48,
    channels: 3,
    background: '#ccc',
    noise: { type: 'gaussian', mean: 128, sigma: 40 },
  },
})
const LEVELS = pyramidLevels(1000, 1000)

/** That the picture of the whole is there. */
const whole = (folder: string, type: TileKind['type']): MakingEvent => ({
  is: 'whole',
  folder,
  file: { path: 'scan', page: 1 },
  whole: { kind: { type, exact: type === 'png' }, tool: 'none', took: 1000 },
})

const PLACE = { level: 0, column: 1, row: 1 }

describe('a tile that is still being written', () => {
  test.each(['png', 'jpeg'] as const)('is known by its end, cut anywhere: %s', async (type) => {
    const bytes = await noisy.toFormat(type).toBuffer()
    expect(isWhole(bytes, type)).toBe(true)
    for (let length = 0; length < bytes.length; length++) {
      expect(isWhole(bytes.subarray(0, length), type), `${length} of ${bytes.length} bytes`).toBe(false)
    }
  })

  test.each(['png', 'jpeg'] as const)(
    'is never handed out, and is as soon as it is whole: %s',
    async (type) => {
      const bytes = await noisy.toFormat(type).toBuffer()
      const folder = await temporaryFolder()
      const path = cutFile(folder, LEVELS.length, PLACE, type)
      await mkdir(dirname(path), { recursive: true })
      const make = (): never => {
        throw new Error('nothing is made out of turn here')
      }
      const tiles = new PageTiles({ levels: LEVELS, limits: () => LIMITS, make }, () => 0)
      tiles.take({ is: 'cutting', into: folder })
      tiles.take(whole(folder, type))
      let answered = false
      const asked = tiles.tile(PLACE).finally(() => {
        answered = true
      })
      for (let piece = 0; piece <= 10; piece++) {
        await writeFile(`${path}.part`, bytes.subarray(0, Math.floor((bytes.length * piece) / 10.001)))
        await rename(`${path}.part`, path)
        await new Promise((resolve) => setTimeout(resolve, 120))
        expect(answered).toBe(false)
      }
      await writeFile(path, bytes)
      expect(await asked).toEqual({ bytes, type: `image/${type}` })
      await tiles.end()
    },
  )

  test('is not there for whoever waits when the making ends', async () => {
    const make = () => Promise.resolve(null)
    const tiles = new PageTiles({ levels: LEVELS, limits: () => LIMITS, make }, () => 0)
    tiles.take(whole(await temporaryFolder(), 'png'))
    const asked = tiles.tile(PLACE)
    expect(await tiles.tile({ level: 0, column: 2, row: 0 })).toBeNull()
    await tiles.end()
    expect(await asked).toBeNull()
    expect(await tiles.tile(PLACE)).toBeNull()
  })
})
