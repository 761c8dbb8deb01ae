/** A job of any size with the mixture of evidence that real ones have. All of it is invented and only timed. */
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Dimension, Evidence, Job, Mark, Reference, View } from '../../src/core/job/model/types.ts'
import { formatLength } from '../../src/core/quantity/format/format-length.ts'
import { randomStream } from '../../src/core/uncertainty/random.ts'

const MM_PER_PX = 0.17

/** @param dimensions how many; there are two marks for each, and 3 views for a thousand */
export function largeJob(dimensions: number): Job {
  const random = randomStream(dimensions)
  const marks: Mark[] = []
  const off = (): number => random.normal()
  const addMark = (mark: Record<string, unknown>): string => {
    const id = `M${marks.length + 1}`
    marks.push({ id, sheet: 'S1', how: 'hand', sigma: 1, ...mark } as unknown as Mark)
    return id
  }
  const point = (x: number, y: number): string => addMark({ kind: 'point', pixel: [x + off(), y + off()] })
  const line = (x: number, y: number, length: number): string =>
    addMark({
      kind: 'line',
      pixels: [0, 1, 2, 3].map((i): Pixel => pixel(x + (i * length) / 3 + off(), y + off())),
    })
  const circle = (x: number, y: number, r: number): string =>
    addMark({
      kind: 'circle',
      pixels: Array.from(
        { length: 8 },
        (_, i): Pixel => pixel(x + r * Math.cos(i) + off(), y + r * Math.sin(i) + off()),
      ),
    })
  const mappings = ['uniform', 'two-axis', 'affine'] as const
  const views = Array.from({ length: Math.max(1, Math.round((3 * dimensions) / 1000)) }, (_, v): View => {
    const references = Array.from({ length: 8 }, (_, r): Reference => {
      const a = (Math.PI * r) / 8
      const [x, y] = [3000 + 40 * r, 2500 - 30 * r]
      const half = 900 + 50 * r
      const ids: [string, string] = [
        point(x - half * Math.cos(a), y - half * Math.sin(a)),
        point(x + half * Math.cos(a), y + half * Math.sin(a)),
      ]
      return {
        id: `R${r + 1}`,
        kind: 'distance',
        marks: ids,
        size: `${(2 * half * MM_PER_PX).toFixed(1)} mm`,
      }
    })
    return {
      id: `V${v + 1}`,
      sheet: 'S1',
      name: `View ${v + 1}`,
      drawnScale: 0.5,
      mapping: mappings[v % 3] ?? 'uniform',
      references,
    }
  })
  const wanted = 2 * dimensions
  const out: Dimension[] = []
  for (let i = 0; i < dimensions; i++) {
    const view = views[i % views.length]?.id ?? 'V1'
    const [x, y] = [1500 + 3000 * random.uniform(), 1200 + 2500 * random.uniform()]
    const size = 200 + 1500 * random.uniform()
    const evidence: Evidence[] = []
    let mm = size * MM_PER_PX
    if (i % 10 < 6) {
      evidence.push({
        id: 's',
        basis: 'scaled',
        view,
        measure: 'distance',
        marks: [point(x, y), point(x + size, y)],
      })
    } else if (i % 10 < 8) {
      evidence.push({
        id: 's',
        basis: 'scaled',
        view,
        measure: 'spacing',
        marks: [line(x, y, 600), line(x, y + size, 600)],
      })
    } else {
      evidence.push({ id: 's', basis: 'scaled', view, measure: 'diameter', marks: [circle(x, y, size / 2)] })
      if (marks.length < wanted) circle(x, y, size / 3)
    }
    if (i % 10 === 3 && i > 20) {
      evidence.push({ id: 'd', basis: 'derived', formula: `(d${i - 1} + d${i - 11}) / 2` })
    } else if (i % 10 !== 7) {
      const sixteenths = Math.max(1, Math.round((mm / 25.4) * 16))
      mm = (sixteenths / 16) * 25.4
      evidence.push({ id: 'p', basis: 'printed', text: formatLength(mm, { unit: 'in', denominator: 16 }) })
    }
    if (i % 5 === 0) {
      evidence.push({
        id: 'f',
        basis: 'found',
        instrument: 'I1',
        readings: [0.1, 0, -0.1].map((e) => `${(mm + e).toFixed(1)} mm`),
      })
    }
    out.push({ name: `d${i}`, label: `Dimension ${i}`, kind: 'length', evidence })
  }
  while (marks.length < wanted) point(6000 * random.uniform(), 5000 * random.uniform())
  return {
    format: 'scantling-job',
    version: 1,
    title: `Large job of ${dimensions}`,
    unit: 'in',
    people: [],
    instruments: [{ id: 'I1', name: 'Vernier caliper', resolution: '0.02 mm', limit: '0.05 mm' }],
    sheets: [
      {
        id: 'S1',
        title: 'Sheet',
        record: {},
        scan: { file: 's.png', sha256: '0'.repeat(64), page: 1, width: 8000, height: 6000, dpi: 300 },
      },
    ],
    views,
    marks,
    dimensions: out,
    relations: Array.from({ length: Math.floor(dimensions / 20) }, (_, i) => ({
      id: `L${i}`,
      text: `d${i} = d${i + 1} + d${i + 2} - d${i + 3}`,
    })),
    notes: [],
  }
}
