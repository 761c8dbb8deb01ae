import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type {
  Dimension,
  Evidence,
  Job,
  MappingKind,
  Mark,
  Reference,
} from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { type RandomStream, randomStream } from '../../../../src/core/uncertainty/random.ts'

/** Pixels in a millimetre, along and across: the sheet shrank. */
const [ALONG, ACROSS] = [5.9, 6.1]

type XY = readonly [number, number]

const NEEDED: Record<MappingKind, number> = { uniform: 1, 'two-axis': 3, affine: 4, projective: 9 }
const MAPPINGS = ['uniform', 'two-axis', 'affine', 'projective'] as const

/**
 * A job at random whose rows share much: marks with references and with one another, picked once or several times,
 * calipers, and dimensions that are worked out from others. Its references may disagree, all of them or one.
 */
export function sharingJob(seed: number): Job {
  const random = randomStream(seed)
  const one = <T>(list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)] as T
  const mapping = MAPPINGS[seed % MAPPINGS.length] ?? 'uniform'
  const marks = new Marks(random)
  const references = Array.from({ length: NEEDED[mapping] + (seed % 3) }, (_, i) =>
    marks.reference(`R${i + 1}`, i, misfitOf(seed, i, random)),
  )
  const points = [...marks.points(8), ...references.flatMap((r) => r.marks)]
  const [lines, circles, paths] = [marks.lines(3), marks.circles(3), marks.paths(2)]
  const scaled = (measure: string, ids: readonly string[]): Evidence =>
    ({ id: 's', basis: 'scaled', view: 'V1', measure, marks: ids }) as Evidence
  const pair = (ids: readonly string[]): string[] => {
    const a = one(ids)
    return [a, one(ids.filter((id) => id !== a))]
  }
  const found = (mm: number): Evidence => ({
    id: 'f',
    basis: 'found',
    instrument: one(['I1', 'I2']),
    readings: Array.from({ length: 1 + Math.floor(3 * random.uniform()) }, () =>
      inMm(mm + 0.05 * random.normal()),
    ),
    ...(random.uniform() < 0.3 ? { worn: { loss: '0.2 mm', u: '0.1 mm' } } : {}),
  })
  const dimensions: Dimension[] = []
  const add = (kind: Dimension['kind'], evidence: Evidence[], adopt?: string): void => {
    const name = `d${dimensions.length + 1}`
    dimensions.push({ name, label: name, kind, evidence, ...(adopt === undefined ? {} : { adopt }) })
  }
  for (let i = 0; i < 6; i++) add('length', [scaled('distance', pair(points))])
  for (const id of circles) add('length', [scaled(one(['diameter', 'radius']), [id])])
  add('length', [scaled('centres', pair(circles))])
  add('length', [scaled('spacing', [lines[0] as string, lines[1] as string])])
  add('angle', [scaled('angle', [lines[0] as string, lines[2] as string])])
  add('angle', [scaled('angle', [lines[1] as string, lines[2] as string])])
  for (const id of paths) add('area', [scaled('area', [id])])
  for (const id of paths) add('length', [scaled('run', [id])])
  for (let i = 0; i < 3; i++) add('length', [found(60 + 90 * random.uniform())])
  const both = pair(points)
  add('length', [scaled('distance', both), found(marks.between(both))], 'mean')
  add('length', [{ id: 'p', basis: 'printed', text: '4 1/16"' }])
  add('length', [{ id: 'd', basis: 'derived', formula: 'd1 + 2 * d7' }])
  add('area', [{ id: 'd', basis: 'derived', formula: 'pi * d7 * d2' }])
  add('length', [{ id: 'd', basis: 'derived', formula: 'sqrt(d1^2 + d2^2)' }])
  return readJob({
    format: 'scantling-job',
    version: 1,
    title: `Rows that share, ${seed}`,
    unit: seed % 2 === 0 ? 'in' : 'mm',
    people: [],
    instruments: [
      { id: 'I1', name: 'vernier caliper', resolution: '0.02 mm', limit: '0.05 mm' },
      { id: 'I2', name: 'steel rule', resolution: '0.5 mm', limit: '0.3 mm' },
    ],
    sheets: [
      {
        id: 'S1',
        title: 'Sheet',
        record: {},
        scan: { file: 's.png', sha256: '0'.repeat(64), page: 1, width: 8000, height: 6000, dpi: 300 },
      },
    ],
    views: [{ id: 'V1', sheet: 'S1', name: 'Elevation', drawnScale: 0.5, mapping, references }],
    marks: marks.all,
    dimensions,
    relations: [],
    notes: [],
  })
}

const inMm = (mm: number): string => `${mm.toFixed(2)} mm`

/** All sizes are a little off in one job of four, and one of them much in another. Millimetres. */
function misfitOf(seed: number, i: number, random: RandomStream): number {
  if (seed % 4 === 1) return 3 * random.normal()
  return seed % 4 === 2 && i === 1 ? 12 : 0
}

class Marks {
  readonly all: Mark[] = []
  private readonly places = new Map<string, XY>()
  constructor(private readonly random: RandomStream) {}

  reference(id: string, i: number, misfit: number): Extract<Reference, { kind: 'distance' }> {
    const a = 2.4 * i + 0.3 * this.random.uniform()
    const half = 90 + 60 * this.random.uniform()
    const [x, y] = [200 + 40 * this.random.normal(), 180 + 40 * this.random.normal()]
    const [from, to]: [XY, XY] = [
      [x - half * Math.cos(a), y - half * Math.sin(a)],
      [x + half * Math.cos(a), y + half * Math.sin(a)],
    ]
    const u = this.random.uniform() < 0.5 ? { u: '0.1 mm' } : {}
    return {
      id,
      kind: 'distance',
      marks: [this.point(from), this.point(to)],
      size: inMm(2 * half + misfit),
      ...u,
    }
  }

  points(n: number): string[] {
    return this.several(n, () => this.point(this.anywhere()))
  }

  lines(n: number): string[] {
    return this.several(n, (i) => {
      const [x, y] = this.anywhere()
      const a = 0.9 * Math.floor(i / 2) + 0.01 * this.random.normal()
      return this.mark(
        'line',
        [0, 40, 80, 120].map((t): XY => [x + t * Math.cos(a), y + t * Math.sin(a)]),
      )
    })
  }

  circles(n: number): string[] {
    return this.several(n, () => {
      const [x, y] = this.anywhere()
      const r = 20 + 40 * this.random.uniform()
      return this.mark(
        'circle',
        [0, 1, 2, 3, 4, 5].map((t): XY => [x + r * Math.cos(t), y + r * Math.sin(t)]),
      )
    })
  }

  paths(n: number): string[] {
    return this.several(n, () => {
      const [x, y] = this.anywhere()
      const corners = [0, 1.2, 2.4, 3.6, 4.8].map((t): XY => [x + 50 * Math.cos(t), y + 70 * Math.sin(t)])
      return this.mark('path', corners, { closed: true })
    })
  }

  /** True distance of two points, mm. */
  between([a, b]: readonly string[]): number {
    const [p, q] = [this.places.get(a ?? ''), this.places.get(b ?? '')]
    return p === undefined || q === undefined ? Number.NaN : Math.hypot(p[0] - q[0], p[1] - q[1])
  }

  private several(n: number, make: (i: number) => string): string[] {
    return Array.from({ length: n }, (_, i) => make(i))
  }

  private anywhere(): XY {
    return [80 + 240 * this.random.uniform(), 60 + 240 * this.random.uniform()]
  }

  /** As picked: a pixel off. */
  private pick([x, y]: XY): Pixel {
    return pixel(ALONG * x + this.random.normal(), ACROSS * y + this.random.normal())
  }

  private point(place: XY): string {
    const again = this.random.uniform() < 0.3 ? [this.pick(place), this.pick(place)] : undefined
    const covariance = this.random.uniform() < 0.2 ? { how: 'stroke', covariance: [0.3, 0.1, 0.2] } : {}
    const id = this.mark('point', [place], { ...(again === undefined ? covariance : { repeats: again }) })
    this.places.set(id, place)
    return id
  }

  private mark(kind: Mark['kind'], places: readonly XY[], more: object = {}): string {
    const id = `M${this.all.length + 1}`
    const [first, ...rest] = places.map((place) => this.pick(place))
    const where = kind === 'point' ? { pixel: first } : { pixels: [first, ...rest] }
    this.all.push({ id, sheet: 'S1', how: 'hand', sigma: 1, kind, ...where, ...more } as unknown as Mark)
    return id
  }
}
