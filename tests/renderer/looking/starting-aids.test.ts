import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { type Degrees, degrees, toRadians } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Sheet } from '../../../src/core/job/model/types.ts'
import { toScreen } from '../../../src/renderer/camera/camera.ts'
import { PLAIN } from '../../../src/renderer/looking/aids.ts'
import { startingAids } from '../../../src/renderer/looking/starting-aids.ts'

/** Six pixels, no two alike, three across and two down. */
const GREYS = [10, 50, 90, 130, 170, 210]
const SCAN = { width: 3, height: 2 }

const sheet = (over: { orientation?: number; straight?: Degrees }): Sheet => {
  const { orientation, straight } = over
  return {
    id: 'S1',
    title: 'Sheet',
    record: {},
    scan: {
      file: 'a.png',
      sha256: '0',
      page: 1,
      ...SCAN,
      ...(orientation === undefined ? {} : { orientation }),
    },
    ...(straight === undefined ? {} : { straight }),
  }
}

/** The six pixels as libvips shows a file that asks for an orientation. */
async function shownByLibvips(orientation: number) {
  const raw = { raw: { ...SCAN, channels: 1 as const } }
  const file = await sharp(Uint8Array.from(GREYS), raw).png().withMetadata({ orientation }).toBuffer()
  const { data, info } = await sharp(file)
    .autoOrient()
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { greys: [...data], width: info.width, height: info.height }
}

/** The six pixels as a window shows a sheet that it begins with. */
function shownInTheWindow(orientation: number) {
  const { turn, mirror } = startingAids(sheet({ orientation }))
  const upright = turn % 180 === 0
  const box = upright ? SCAN : { width: SCAN.height, height: SCAN.width }
  const camera = { centre: pixel(1.5, 1), zoom: 1, turn: toRadians(turn), mirror }
  const greys: number[] = []
  GREYS.forEach((grey, i) => {
    const [x, y] = toScreen(camera, box, pixel((i % 3) + 0.5, Math.floor(i / 3) + 0.5))
    greys[Math.round(y - 0.5) * box.width + Math.round(x - 0.5)] = grey
  })
  return { greys, ...box }
}

describe('a sheet that nobody has looked at yet', () => {
  it.each([2, 3, 4, 5, 6, 7, 8])(
    'lies as its file asks, orientation %i, just as libvips shows it',
    async (n) => {
      expect(shownInTheWindow(n)).toEqual(await shownByLibvips(n))
    },
  )

  it('lies as its pixels are stored when the file asks for nothing', () => {
    expect(startingAids(sheet({}))).toEqual(PLAIN)
  })

  it('lies straight once it was straightened, the line level on the screen', () => {
    for (const orientation of [undefined, 2, 6, 7]) {
      const straight = degrees(3.25)
      const { turn, mirror } = startingAids(
        sheet({ straight, ...(orientation === undefined ? {} : { orientation }) }),
      )
      const camera = { centre: pixel(0, 0), zoom: 1, turn: toRadians(turn), mirror }
      const along = (straight * Math.PI) / 180
      const [, y] = toScreen(
        camera,
        { width: 0, height: 0 },
        pixel(1000 * Math.cos(along), 1000 * Math.sin(along)),
      )
      expect(y).toBeCloseTo(0, 9)
    }
  })

  it('begins the same each time that it is asked for', () => {
    const one = sheet({ orientation: 6 })
    expect(startingAids(one)).toBe(startingAids(one))
  })
})
