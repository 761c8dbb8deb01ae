/**
 * How often a pick from far off is taken for a stroke that was not meant, on a drawing with thin walls, concentric rims,
 * dimension lines beside edges, hatching and lettering: by kind and by how large the sheet is seen. Run by
 * `node scripts/run-ts.mjs tests/renderer/strokes/far-picks.ts SCAN [trials]`, SCAN the file that `gestures` draws.
 */
import sharp from 'sharp'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { FoundStroke } from '../../../src/core/imaging/index.ts'
import { AS_IT_LIES } from '../../../src/renderer/strokes/edge-sides.ts'
import { lookInStages } from '../../../src/renderer/strokes/search-scan.ts'
import type { SearchWish } from '../../../src/renderer/strokes/search-wish.ts'
import { BOLTS, CORNERS, DOWELS, onScan } from '../../bench/gestures/plate.ts'
import { caseStream } from '../../core/imaging/simulate/case-stream.ts'
import { pyramidOf } from './pyramid-of.ts'

type Place = readonly [number, number]

const ZOOMS = [0.1, 0.15, 0.2, 0.3, 0.4]
/** CSS pixels: how far a hand comes down from what it means, and how far a stroke may be. */
const ASTRAY = 1.5
const NEAR = 8
/** Further from what was meant than this it is another stroke, pixels of the scan. */
const OTHER = 2

interface Meant {
  kind: string
  as: 'point' | 'line' | 'circle'
  picks: readonly Place[]
  /** How far from it what was found lies, pixels of the scan. */
  off: (found: FoundStroke) => number
}

const apart = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1])

const corner = (kind: string, at: Place): Meant => ({
  kind,
  as: 'point',
  picks: [at],
  off: (found) => ('pixel' in found ? apart(found.pixel, onScan(at)) : Number.POSITIVE_INFINITY),
})

function fromLine([a, b]: readonly [Place, Place], at: readonly [number, number]): number {
  const [p, q] = [onScan(a), onScan(b)]
  return Math.abs((q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0])) / apart(p, q)
}

const edge = (kind: string, a: Place, b: Place): Meant[] => [
  {
    kind: `${kind}, line`,
    as: 'line',
    picks: [a, b],
    off: (found) =>
      found.kind === 'line'
        ? Math.max(...found.ends.map((end) => fromLine([a, b], end)))
        : Number.POSITIVE_INFINITY,
  },
  {
    kind: `${kind}, point`,
    as: 'point',
    picks: [[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]],
    off: (found) => ('pixel' in found ? fromLine([a, b], found.pixel) : Number.POSITIVE_INFINITY),
  },
]

const ring = (kind: string, at: Place, r: number): Meant => ({
  kind,
  as: 'circle',
  picks: [0.35, 2.45, 4.55].map((a): Place => [at[0] + r * Math.cos(a), at[1] + r * Math.sin(a)]),
  off: (found) =>
    found.kind === 'circle' || found.kind === 'arc'
      ? Math.max(Math.abs(found.radius - r * 4.99), apart(found.centre, onScan(at)))
      : Number.POSITIVE_INFINITY,
})

const ALL: readonly Meant[] = [
  corner('corner of plate', [300, 0]),
  corner('corner of plate', [0, 240]),
  corner('corner by witness lines', [0, 0]),
  corner('corner by hatching', [392.5, 0]),
  corner('corner of hub', [440, 80]),
  corner('corner of groove', [36, 180]),
  ...edge('edge of plate', [60, 0], [240, 0]),
  ...edge('cut edge by hatching', [380, 40], [380, 200]),
  ...edge('cut edge by hatching', [392.5, 20], [392.5, 70]),
  ...edge('groove', [36, 75], [36, 165]),
  ...edge('slot', [134, 218], [166, 218]),
  ...edge('cone', [446, 83], [474, 97]),
  ...edge('edge by lettering', [110, 0], [70, 0]),
  ...edge('dimension line', [20, -15], [120, -15]),
  ring('bore', [150, 120], 40),
  ring('recess', [150, 120], 48),
  ...BOLTS.map((at) => ring('bolt hole', at, 7)),
  ...CORNERS.map((at) => ring('corner hole', at, 10)),
  ...DOWELS.map((at) => ring('dowel hole', at, 4.5)),
]

const [file, trials = '4'] = process.argv.slice(2)
if (file === undefined) throw new Error('far-picks: name the scan.')
const { data, info } = await sharp(file).greyscale().raw().toBuffer({ resolveWithObject: true })
const { pictures, looking } = pyramidOf({
  left: 0,
  top: 0,
  width: info.width,
  height: info.height,
  data: new Uint8Array(data),
})
const told = new Map<string, Map<number, { all: number; none: number; other: number; worst: string }>>()
const random = caseStream(7)
let slowest = 0
for (let k = 0; k < Number(trials); k++) {
  for (const meant of ALL) {
    for (const zoom of ZOOMS) {
      const rough = meant.picks.map((at): Pixel => {
        const [x, y] = onScan(at)
        return pixel(x + (ASTRAY / zoom) * random.normal(), y + (ASTRAY / zoom) * random.normal())
      })
      const wish: SearchWish = {
        as: meant.as,
        reach: Math.max(4, NEAR / zoom),
        reading: { straight: 'centre', round: 'centre', from: AS_IT_LIES },
        either: meant.as !== 'line',
        ink: 'dark',
      }
      const begun = performance.now()
      const found = (await lookInStages(rough, wish, pictures, looking))?.found
      slowest = Math.max(slowest, performance.now() - begun)
      const of = told.get(meant.kind) ?? new Map()
      told.set(meant.kind, of)
      const score = of.get(zoom) ?? { all: 0, none: 0, other: 0, worst: '' }
      of.set(zoom, score)
      score.all++
      if (found === undefined || found.kind === 'none') score.none++
      else if (meant.off(found) > OTHER) {
        score.other++
        score.worst = `${found.kind}, ${meant.off(found).toFixed(1)} px off`
      }
    }
  }
}
console.log(`of each: found, none, another; at ${ZOOMS.join(', ')}`)
for (const [kind, of] of told) {
  const cells = ZOOMS.map((zoom) => {
    const s = of.get(zoom)
    return s === undefined ? '' : `${s.all - s.none - s.other}/${s.none}/${s.other}`.padStart(9)
  })
  const worst = [...of.values()].map(({ worst }) => worst).filter((words) => words !== '')
  console.log(`${kind.padEnd(30)} ${cells.join(' ')}  ${worst.join('; ')}`)
}
console.log(`The slowest search took ${slowest.toFixed(0)} ms.`)
