import fc from 'fast-check'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type {
  Dimension,
  Evidence,
  Job,
  Mark,
  Reference,
  RepeatedBy,
  View,
} from '../../../src/core/job/model/types.ts'
import { listed } from '../../../src/core/job/picks/with-picks.ts'

/** Draws the next value of an arbitrary; what `fc.gen()` gives. */
export type Draw = fc.GeneratorValue

export const some = (draw: Draw, most: number): number => draw(fc.integer, { min: 0, max: most })
export const sometimes = (draw: Draw): boolean => draw(fc.boolean)

export function oneOf<T>(draw: Draw, list: readonly T[]): T | undefined {
  return list.length === 0 ? undefined : list[some(draw, list.length - 1)]
}

export const coordinate = (draw: Draw): number =>
  draw(fc.double, { min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true })

export const anyPixel = (draw: Draw): Pixel => pixel(coordinate(draw), coordinate(draw))

/** Pixels that are not all the same. */
function pixels(draw: Draw, least: number): Pixel[] {
  const first = anyPixel(draw)
  const more = Array.from({ length: least - 1 + some(draw, 2) }, () => anyPixel(draw))
  return [first, ...more.slice(0, -1), pixel(first[0] + 1 + some(draw, 9), first[1])]
}

/** Any JSON but with a field `__proto__`, which is refused. */
const anyJson = fc.jsonValue({ maxDepth: 2 }).filter((value) => !JSON.stringify(value).includes('__proto__'))

/** Fields of a later version, at times. */
export function later(draw: Draw): Record<string, unknown> {
  if (some(draw, 4) > 0) return {}
  const field = oneOf(draw, ['later', 'zz', 'a_field', 'constructor']) ?? 'later'
  return { [field]: draw(() => anyJson) }
}

export const length = (draw: Draw): string =>
  oneOf(draw, ['14 3/8"', `1'-2 3/8"`, '365.1 mm', '.375', 'No. 16 GA', '2 in']) ?? '1 in'

/** A length as a tolerance gives it, which is not that of a sheet gauge. */
const tolerance = (draw: Draw): string => oneOf(draw, ['1/32"', '±1/64"', '+0 −0.2 mm']) ?? '1/32"'

export function written(draw: Draw, kind: Dimension['kind']): string {
  switch (kind) {
    case 'angle':
      return oneOf(draw, ["47° 30'", '12.5°']) ?? '1°'
    case 'area':
      return oneOf(draw, ['12.4 sq in', '8000 mm²']) ?? '1 sq in'
    case 'count':
      return oneOf(draw, ['4', '6 HOLES']) ?? '1'
    case 'length':
      return length(draw)
  }
}

export function maybeBy(draw: Draw, job: Job): { by?: string; at?: string } {
  const by = sometimes(draw) ? oneOf(draw, job.people)?.id : undefined
  return by === undefined ? {} : { by, at: '2026-02-03T10:00:00Z' }
}

/** Who took a decision and when, as its fields are called. */
function maybeDecided(
  draw: Draw,
  job: Job,
  decision: 'withdrawn' | 'adopted',
): { [K in `${typeof decision}By` | `${typeof decision}At`]?: string } {
  const { by, at } = maybeBy(draw, job)
  return by === undefined ? {} : { [`${decision}By`]: by, [`${decision}At`]: at }
}

export function mark(draw: Draw, job: Job, id: string): Mark | undefined {
  const sheet = oneOf(draw, job.sheets)?.id
  if (sheet === undefined) return undefined
  const how = sometimes(draw) ? 'hand' : 'stroke'
  const base = {
    id,
    sheet,
    how,
    sigma: 0.1 + some(draw, 20) / 10,
    ...maybeBy(draw, job),
    ...later(draw),
  } as const
  switch (some(draw, 5)) {
    case 0:
      return { ...base, kind: 'line', pixels: pixels(draw, 2) }
    case 1:
      return { ...base, kind: 'circle', pixels: pixels(draw, 3) }
    case 2: {
      const closed = sometimes(draw)
      return { ...base, kind: 'path', pixels: pixels(draw, 3), ...(closed ? { closed } : {}) }
    }
    case 3:
      return { ...base, kind: 'point', pixel: anyPixel(draw), repeats: [anyPixel(draw)], label: 'rivet' }
    default:
      return { ...base, kind: 'point', pixel: anyPixel(draw) }
  }
}

/** A mark that some of the people picked again, as the fields beside `picks` say it. */
export function pickedAgain(draw: Draw, job: Job, made: Mark): Mark {
  const n = some(draw, 3)
  if (n === 0) return made
  const signatures = Array.from(
    { length: some(draw, n) },
    (): RepeatedBy => ({
      ...maybeBy(draw, job),
      ...(sometimes(draw) ? { sitting: oneOf(draw, ['forenoon', 'afternoon']) } : {}),
      ...(sometimes(draw) ? { how: made.how, sigma: 0.5 } : {}),
      ...later(draw),
    }),
  )
  const said = {
    ...(sometimes(draw) ? { sitting: 'forenoon' } : {}),
    ...(sometimes(draw) ? { repeatedBy: signatures } : {}),
  }
  if (made.kind === 'point') {
    return { ...made, ...said, repeats: Array.from({ length: n }, () => anyPixel(draw)) }
  }
  const again = Array.from({ length: n }, (_, i) => made.pixels.map(([x, y]) => pixel(x, y + i + 1)))
  return { ...made, ...said, repeats: again }
}

function differentMarks(
  draw: Draw,
  job: Job,
  sheet: string,
  suits: readonly ((mark: Mark) => boolean)[],
): string[] | undefined {
  const ids: string[] = []
  for (const one of suits) {
    const id = oneOf(
      draw,
      job.marks.filter((m) => m.sheet === sheet && one(m) && !ids.includes(m.id)),
    )?.id
    if (id === undefined) return undefined
    ids.push(id)
  }
  return ids
}

const isA = (kind: Mark['kind']) => (m: Mark) => m.kind === kind
const isClosed = (m: Mark) => m.kind === 'path' && m.closed === true

export function reference(
  draw: Draw,
  job: Job,
  view: Pick<View, 'sheet'>,
  id: string,
): Reference | undefined {
  const base = {
    id,
    ...maybeBy(draw, job),
    ...(sometimes(draw) ? { u: length(draw) } : {}),
    ...later(draw),
  }
  const point = isA('point')
  switch (some(draw, 2)) {
    case 0: {
      const marks = differentMarks(draw, job, view.sheet, [point, point])
      return marks && { ...base, kind: 'distance', marks: marks as [string, string], size: length(draw) }
    }
    case 1: {
      const marks = differentMarks(draw, job, view.sheet, [isA('circle')])
      return marks && { ...base, kind: 'diameter', marks: marks as [string], size: length(draw) }
    }
    default: {
      const marks = differentMarks(draw, job, view.sheet, [point, point, point, point])
      const four = marks as [string, string, string, string] | undefined
      return four && { ...base, kind: 'rectangle', marks: four, width: length(draw), height: length(draw) }
    }
  }
}

const MEASURES = {
  length: [
    ['distance', [isA('point'), isA('point')]],
    ['spacing', [isA('line'), isA('line')]],
    ['spacing', [isA('line'), isA('point')]],
    ['spacing', [isA('point'), isA('line')]],
    ['diameter', [isA('circle')]],
    ['radius', [isA('circle')]],
    ['centres', [isA('circle'), isA('circle')]],
    ['slot-width', [isA('circle'), isA('circle')]],
    ['slot-length', [isA('circle'), isA('circle')]],
    ['run', [isA('path')]],
  ],
  angle: [['angle', [isA('line'), isA('line')]]],
  area: [['area', [isClosed]]],
  count: [],
} as const

/** A formula over dimensions listed before this one, so that nothing runs in a circle. */
function formula(draw: Draw, job: Job, kind: Dimension['kind'], before: number): string | undefined {
  const alike = job.dimensions.slice(0, before).filter((d) => d.kind === kind)
  const [a, b] = [oneOf(draw, alike)?.name, oneOf(draw, alike)?.name]
  if (a === undefined || b === undefined) return undefined
  return oneOf(draw, [`${a} + ${b}`, `2*${a} -${b}`, `max(${a},  ${b})`, a])
}

/** Evidence for the dimension that stands at a place in the list, or will. */
export function evidence(
  draw: Draw,
  job: Job,
  dimension: Pick<Dimension, 'kind'>,
  place: number,
  id: string,
): Evidence | undefined {
  const base = {
    id,
    ...maybeBy(draw, job),
    ...(some(draw, 3) === 0 ? { withdrawn: 'misread' } : {}),
    // Said of evidence that is not withdrawn, it means nothing, and is kept.
    ...(some(draw, 3) === 0 ? maybeDecided(draw, job, 'withdrawn') : {}),
    ...later(draw),
  }
  switch (some(draw, 3)) {
    case 0: {
      const sheet = oneOf(draw, job.sheets)?.id
      const where =
        sheet === undefined ? {} : { sheet, box: [1, 2, 3, 4] as [number, number, number, number] }
      return { ...base, basis: 'printed', text: draw(fc.string), ...where, legibility: 'doubtful' }
    }
    case 1: {
      const view = oneOf(draw, job.views)
      const measure = oneOf<readonly [string, readonly ((m: Mark) => boolean)[]]>(
        draw,
        MEASURES[dimension.kind],
      )
      if (view === undefined || measure === undefined) return undefined
      const marks = differentMarks(draw, job, view.sheet, measure[1])
      return marks && ({ ...base, basis: 'scaled', view: view.id, measure: measure[0], marks } as Evidence)
    }
    case 2: {
      const instrument = oneOf(draw, job.instruments)?.id
      const readings = Array.from({ length: 1 + some(draw, 2) }, () => written(draw, dimension.kind))
      return { ...base, basis: 'found', readings, ...(instrument === undefined ? {} : { instrument }) }
    }
    default: {
      const text = formula(draw, job, dimension.kind, place)
      return text === undefined ? undefined : { ...base, basis: 'derived', formula: text }
    }
  }
}

export function dimension(draw: Draw, job: Job, name: string, place: number): Dimension {
  const kind = oneOf(draw, ['length', 'length', 'length', 'angle', 'area', 'count'] as const) ?? 'length'
  const ids = ['P1', 'S1', 'F1'].slice(0, some(draw, 3))
  const all = ids.map((id) => evidence(draw, job, { kind }, place, id)).filter((e) => e !== undefined)
  const adopt = oneOf(draw, [undefined, 'mean', all[0]?.id])
  return {
    name,
    label: draw(fc.string),
    kind,
    ...maybeBy(draw, job),
    ...(adopt === undefined ? {} : { adopt }),
    ...maybeDecided(draw, job, 'adopted'),
    ...(sometimes(draw) ? { tolerance: kind === 'length' ? tolerance(draw) : written(draw, kind) } : {}),
    ...(sometimes(draw) ? { count: 1 + some(draw, 5) } : {}),
    evidence: all,
    ...later(draw),
  }
}

export function relationText(draw: Draw, job: Job): string | undefined {
  const alike = job.dimensions.filter((d) => d.kind === 'length')
  const [a, b, c] = [oneOf(draw, alike)?.name, oneOf(draw, alike)?.name, oneOf(draw, alike)?.name]
  return a && `${a} = ${b} +  ${c}`
}

/** A sound job, with anything in it from nothing to a little of everything. */
export function anyJob(draw: Draw): Job {
  const job: Job = {
    format: 'scantling-job',
    version: 2,
    title: draw(fc.string),
    unit: sometimes(draw) ? 'in' : 'mm',
    ...(sometimes(draw) ? { tolerance: tolerance(draw) } : {}),
    ...(sometimes(draw) ? { gauge: 'birmingham' as const } : {}),
    people: [],
    instruments: [],
    sheets: [],
    views: [],
    marks: [],
    dimensions: [],
    relations: [],
    notes: [],
    ...later(draw),
  }
  const times = (most: number, add: (i: number) => void): void => {
    for (let i = some(draw, most); i > 0; i--) add(i)
  }
  times(2, (i) => {
    const person = { id: `who${i}`, name: draw(fc.string), ...later(draw) }
    const by = oneOf(draw, [undefined, person.id, job.people[0]?.id])
    job.people.push(by === undefined ? person : { ...person, by, at: '2026-02-03T09:00:00Z' })
  })
  times(2, (i) =>
    job.instruments.push({
      id: `cal${i}`,
      name: 'caliper',
      resolution: length(draw),
      ...maybeBy(draw, job),
      ...later(draw),
    }),
  )
  times(2, (i) => {
    const scan = {
      file: `scan-${i}.png`,
      sha256: 'ab'.repeat(32),
      page: i,
      width: 100,
      height: 100,
      ...later(draw),
    }
    const entered = maybeBy(draw, job)
    const dismissed = [{ box: [9, 2, 3, 4] as [number, number, number, number], ...later(draw) }]
    job.sheets.push({
      id: `s${i}`,
      title: '',
      ...entered,
      record: { ...later(draw) },
      scan,
      ...(some(draw, 3) === 0 ? { dismissed } : {}),
      ...later(draw),
    })
  })
  times(12, (i) => {
    const made = mark(draw, job, `M${i}`)
    if (made) job.marks.push(listed(pickedAgain(draw, job, made)))
  })
  times(2, (i) => {
    const sheet = oneOf(draw, job.sheets)?.id
    if (sheet === undefined) return
    const references = ['R1', 'R2', 'R3']
      .slice(0, some(draw, 3))
      .map((id) => reference(draw, job, { sheet }, id))
      .filter((r) => r !== undefined)
    const view = { id: `v${i}`, sheet, name: 'Elevation', mapping: 'affine', references } as const
    job.views.push({ ...view, ...maybeBy(draw, job), ...later(draw) })
  })
  times(5, (i) => job.dimensions.push(dimension(draw, job, `dim_${i}`, job.dimensions.length)))
  times(2, (i) => {
    const text = relationText(draw, job)
    if (text) job.relations.push({ id: `E${i}`, text, ...maybeBy(draw, job), ...later(draw) })
  })
  times(2, (i) => {
    const sheet = oneOf(draw, job.sheets)?.id
    const about = oneOf(draw, [...job.dimensions.map((d) => d.name), 'nobody_knows', 'dim_new'])
    if (sheet)
      job.notes.push({ id: `N${i}`, sheet, outline: [anyPixel(draw)], text: '', about, ...later(draw) })
  })
  return job
}
