import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import { MEASURES } from '../../../src/core/measuring/measures/measures.ts'
import { observe } from '../../../src/core/measuring/propagate-measure.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import type { Source } from '../../../src/core/uncertainty/source.ts'
import { EVERY_MEASURE, pixelOf, randomFeatures } from '../calibration/figure-on-sheet.ts'
import { randomTheta } from '../mapping/random-theta.ts'

const SHEETS = 25

const kinds = Object.keys(MAPPINGS) as MappingKind[]

describe.each(kinds)('through a %s mapping, what moves a measure is what finite differences say', (kind) => {
  it.each(EVERY_MEASURE)('%s', (name) => {
    const random = randomStream(100 + EVERY_MEASURE.indexOf(name))
    const measure = MEASURES[name === 'spacing of a point' ? 'spacing' : name]
    let checked = 0
    for (let sheet = 0; sheet < SHEETS; sheet++) {
      const theta = randomTheta(kind, random)
      const view: ViewMapping = {
        mapping: MAPPINGS[kind],
        frame: { origin: pixel(1900, 1400), extent: 1200, grain: radians(0.05 * random.normal()) },
        draughting: 0.2,
      }
      const features = randomFeatures(name, (p) => pixelOf(view, theta, p), random)
      const o = observe(view, theta, features, measure)

      o.byParameter.forEach((g, k) => {
        const h = 1e-6 * (k < 3 ? 0.2 : 1)
        const at = (by: number): number =>
          observe(
            view,
            theta.map((t, j) => (j === k ? t + by : t)),
            features,
            measure,
          ).value
        const numeric = (at(h) - at(-h)) / (2 * h)
        expect(Math.abs(g - numeric)).toBeLessThan(1e-5 * (Math.abs(g) + o.value))
        checked++
      })

      const total = Math.hypot(...o.contributions)
      expect(new Set(o.sources).size).toBe(o.sources.length)
      o.sources.forEach((source, i) => {
        const h = 2e-3
        const at = (by: number): number =>
          observe(view, theta, features, measure, (s: Source) => (s === source ? by : 0)).value
        const numeric = (at(h) - at(-h)) / (2 * h)
        expect(Math.abs((o.contributions[i] ?? 0) - numeric)).toBeLessThan(2e-5 * total)
        checked++
      })
    }
    expect(checked).toBeGreaterThan(SHEETS * 4)
  })
})
