import { beforeAll, describe, expect, it } from 'vitest'
import {
  applyEdit,
  type Change,
  changesOf,
  confusableGlyphs,
  degrees,
  describeEdit,
  dimensionTable,
  featureOf,
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  fromWebAnnotations,
  type GreyWindow,
  type HistoryLine,
  historyOf,
  inWords,
  type Job,
  MAPPINGS,
  type Mark,
  type NoStroke,
  newJob,
  type Pixel,
  parseJobText,
  patternLattice,
  pixel,
  radians,
  rankFigures,
  readEdit,
  readings,
  readJob,
  type StrokeCircle,
  type StrokeLine,
  searchWindow,
  type Table,
  tableCsv,
  tableJson,
  tableMarkdown,
  toWebAnnotations,
  viewFrame,
  writeJob,
} from '../../src/core/index.ts'
import { drawnAt, drawPlate, GRAIN_DEGREES, HOLE, PLATE, SCAN, type XY } from './drawn-plate.ts'

const scan = drawPlate(1)

/** A rough pick: where something is drawn, off by a pixel or two. */
const near = (at: XY, off: XY = [1.4, -1.1]): Pixel => {
  const [x, y] = drawnAt(at)
  return pixel(x + off[0], y + off[1])
}

/** The part of the scan that a search looks at. */
function windowAbout(rough: readonly Pixel[], sought: Parameters<typeof searchWindow>[1]): GreyWindow {
  const [left, top, right, bottom] = searchWindow(rough, sought, { scan: SCAN }).box
  const [width, height] = [right - left, bottom - top]
  const data = new Uint8Array(width * height)
  for (let row = 0; row < height; row++) {
    const from = (top + row) * SCAN.width + left
    data.set(scan.subarray(from, from + width), row * width)
  }
  return { left, top, width, height, data }
}

/** What was found; a test without it ends here. */
function found<T>(result: T | NoStroke): T {
  if (typeof result === 'object' && result !== null && 'because' in result)
    throw new Error(inWords(result.because))
  return result as T
}

const stroke = (id: string, sigma: number) => ({ id, sheet: 'S1', how: 'stroke', sigma }) as const

function pointMark(id: string, at: XY): Mark {
  const rough = near(at)
  const point = found(findPoint(windowAbout([rough], 'point'), rough))
  const [c, s] = [Math.cos(point.direction), Math.sin(point.direction)]
  const [along, across] = [1, point.across ** 2]
  return {
    ...stroke(id, 1),
    kind: 'point',
    pixel: point.pixel,
    covariance: [along * c * c + across * s * s, (along - across) * c * s, along * s * s + across * c * c],
  }
}

function crossingMark(id: string, at: XY): Mark {
  const rough = near(at)
  const { pixel: place, covariance } = found(findCrossing(windowAbout([rough], 'crossing'), rough))
  const [xx, xy, yy] = covariance
  const worst = Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy))
  return { ...stroke(id, worst), kind: 'point', pixel: place, covariance }
}

const kept = ({ profiles }: StrokeLine | StrokeCircle): Pixel[] =>
  profiles.flatMap(({ centre, kept }) => (kept ? [centre] : []))

function lineMark(id: string, from: XY, to: XY): Mark {
  const [a, b] = [near(from), near(to)]
  const line = found(findLine(windowAbout([a, b], 'line'), a, b))
  return { ...stroke(id, line.sigma), kind: 'line', pixels: kept(line) }
}

function circleMark(id: string): Mark {
  const [x, y] = HOLE.centre
  const r = HOLE.diameter / 2
  const three: [Pixel, Pixel, Pixel] = [near([x + r, y]), near([x, y + r]), near([x - r, y])]
  const circle = found(findCircle(windowAbout(three, 'circle'), three))
  return { ...stroke(id, circle.sigma), kind: 'circle', pixels: kept(circle) }
}

const { width, height } = PLATE

function plateJob(): Job {
  const scaled = (measure: string, marks: string[]) => [
    { id: 's', basis: 'scaled', view: 'V1', measure, marks },
  ]
  return readJob({
    ...newJob('Plate with a hole', 'mm'),
    people: [{ id: 'ada', name: 'Ada Quill' }],
    sheets: [
      {
        id: 'S1',
        title: 'Plate',
        record: {},
        scan: { file: 'plate.png', sha256: 'ab'.repeat(32), page: 1, ...SCAN },
        draughting: '0.1 mm',
      },
    ],
    views: [
      {
        id: 'V1',
        sheet: 'S1',
        name: 'Plan',
        drawnScale: 1,
        mapping: 'two-axis',
        grain: degrees(GRAIN_DEGREES),
        references: [
          { id: 'R1', kind: 'distance', marks: ['A', 'B'], size: `${width} mm` },
          { id: 'R2', kind: 'distance', marks: ['D', 'C'], size: `${width} mm` },
          { id: 'R3', kind: 'distance', marks: ['A', 'D'], size: `${height} mm` },
        ],
      },
    ],
    marks: [
      crossingMark('A', [0, 0]),
      crossingMark('B', [width, 0]),
      crossingMark('C', [width, height]),
      crossingMark('D', [0, height]),
      lineMark('top', [15, 0], [105, 0]),
      lineMark('foot', [15, height], [105, height]),
      lineMark('side', [0, 15], [0, 65]),
      circleMark('hole'),
      pointMark('left', [0, height / 2]),
      pointMark('right', [width, height / 2]),
    ],
    dimensions: [
      {
        name: 'plate_width',
        label: 'Width',
        kind: 'length',
        evidence: scaled('distance', ['left', 'right']),
      },
      { name: 'plate_height', label: 'Height', kind: 'length', evidence: scaled('spacing', ['top', 'foot']) },
      { name: 'diagonal', label: 'Diagonal', kind: 'length', evidence: scaled('distance', ['A', 'C']) },
      {
        name: 'hole',
        label: 'Hole',
        kind: 'length',
        evidence: [...scaled('diameter', ['hole']), { id: 'p', basis: 'printed', text: 'Ø 40 mm' }],
      },
      { name: 'corner', label: 'Corner', kind: 'angle', evidence: scaled('angle', ['top', 'side']) },
      {
        name: 'plate_area',
        label: 'Area',
        kind: 'area',
        evidence: [{ id: 'd', basis: 'derived', formula: 'plate_width * plate_height' }],
      },
    ],
    relations: [{ id: 'Q1', text: 'diagonal^2 = plate_width^2 + plate_height^2' }],
    notes: [
      { id: 'N1', sheet: 'S1', outline: [pixel(10, 10), pixel(90, 10), pixel(90, 60)], text: 'Corner worn.' },
    ],
  })
}

let job: Job
let table: Table
beforeAll(() => {
  job = plateJob()
  table = dimensionTable(job)
})

const row = (name: string) => {
  const one = table.rows.find((r) => r.name === name)
  if (one === undefined) throw new Error(`The table has no ${name}.`)
  return one
}

describe('strokes on the scan', () => {
  it('are found where they are drawn, finer than a tenth of a pixel', () => {
    for (const [id, at] of [
      ['A', [0, 0]],
      ['B', [width, 0]],
      ['C', [width, height]],
      ['D', [0, height]],
    ] as const) {
      const mark = job.marks.find((m) => m.id === id)
      const [x, y] = drawnAt(at)
      expect(mark?.kind === 'point' && Math.hypot(mark.pixel[0] - x, mark.pixel[1] - y)).toBeLessThan(0.1)
    }
  })

  it('are said not to be there, in words, where there is none', () => {
    const rough = near([100, 60])
    const none = findPoint(windowAbout([rough], 'point'), rough)
    expect(none).toMatchObject({ kind: 'none', because: { code: expect.stringMatching(/^stroke\./) } })
    expect(none.kind === 'none' && inWords(none.because)).toMatch(/\.$/)
  })
})

describe('the table of what was picked', () => {
  it.each([
    ['plate_width', width, 0.6],
    ['plate_height', height, 0.6],
    ['diagonal', Math.hypot(width, height), 0.6],
    ['hole', HOLE.diameter, 0.6],
    ['corner', 90, 0.6],
    ['plate_area', width * height, 80],
  ])('has the known %s within U, and U is of use', (name, truth, most) => {
    const [measured] = row(name).evidence
    expect(measured?.U).toBeGreaterThan(0)
    expect(measured?.U).toBeLessThan(most)
    expect(Math.abs((measured?.value ?? Number.NaN) - truth)).toBeLessThanOrEqual(measured?.U ?? 0)
  })

  it('sees the paper shrunk more one way than the other', () => {
    const { along, across } = table.views[0]?.parameters ?? {}
    expect(along?.value).toBeCloseTo(1 / 5, 4)
    expect(across?.value).toBeCloseTo(1 / 4.97, 4)
  })

  it('finds the figure on the sheet and what was scaled in agreement', () => {
    expect(row('hole').status).toBe('agreed')
  })

  it('closes by the theorem of Pythagoras', () => {
    expect(table.relations).toMatchObject([{ id: 'Q1', holds: true }])
  })

  it('goes back to pixels: the far corner is where it was found', () => {
    const view = MAPPINGS['two-axis']
    const marks = job.marks.filter(({ id }) => ['A', 'B', 'C', 'D'].includes(id))
    const frame = viewFrame(marks.map(featureOf), radians((GRAIN_DEGREES * Math.PI) / 180))
    const theta = view.parameters.map(({ name }) => table.views[0]?.parameters[name]?.value ?? Number.NaN)
    for (const mark of marks) {
      if (mark.kind !== 'point') continue
      const [x, y] = view.invert(theta, view.apply(theta, mark.pixel, frame).point, frame)
      expect(x).toBeCloseTo(mark.pixel[0], 9)
      expect(y).toBeCloseTo(mark.pixel[1], 9)
    }
  })
})

describe('the job', () => {
  it('is the same again from its text', () => {
    const text = writeJob(job)
    expect(parseJobText(text)).toEqual(job)
    expect(writeJob(parseJobText(text))).toBe(text)
  })

  it('is refused with a sentence when it is not sound', () => {
    expect(() => readJob({ ...job, marks: [] })).toThrow(/A/)
    expect(() => parseJobText('{')).toThrow(/line 1/)
  })

  it('takes an edit, and the edit that takes it back', () => {
    const edit = readEdit({ do: 'adopt', dimension: 'hole', adopt: 'scaled' })
    expect(describeEdit(edit)).toBe('adopt scaled for hole')
    const { job: after, inverse } = applyEdit(job, edit)
    expect(dimensionTable(after).rows.find(({ name }) => name === 'hole')?.basis).toBe('scaled')
    expect(row('hole').basis).toBe('printed')
    expect(writeJob(applyEdit(after, inverse).job)).toBe(writeJob(job))
  })

  it('has a history: who did what, and what was there before', () => {
    const edit = readEdit({ do: 'change-dimension', name: 'hole', set: { label: 'Hole, middle' } })
    const { job: after, inverse: back } = applyEdit(job, edit)
    const line: HistoryLine = { n: 1, at: '2026-03-09T10:05:00Z', by: 'ada', edit, back }
    const before = job.dimensions.find(({ name }) => name === 'hole')?.label
    const changes: Change[] = changesOf(line)
    expect(changes).toEqual([
      {
        thing: { kind: 'dimension', id: 'hole' },
        verb: 'changed',
        fields: [{ field: 'label', before, after: 'Hole, middle' }],
      },
    ])
    const [entry] = historyOf([line], { kind: 'dimension', id: 'hole' }, after, job)
    expect(entry).toMatchObject({ n: 1, by: 'ada', changes })
  })
})

describe('what is handed over', () => {
  it('is JSON that holds the table', () => {
    expect(JSON.parse(tableJson(table))).toEqual(JSON.parse(JSON.stringify(table)))
  })

  it('is CSV with a record for each dimension, their values in it', () => {
    const [heading = '', ...records] = tableCsv(table).split('\r\n')
    const columns = heading.split(',')
    for (const name of ['plate_width', 'diagonal']) {
      const cells = records.find((record) => record.startsWith(`${name},`))?.split(',') ?? []
      const { value, U } = row(name)
      const off = Math.abs(Number(cells[columns.indexOf('value')]) - (value ?? Number.NaN))
      // Two digits more than are worth showing.
      expect(off).toBeLessThan(U === 0 ? 1e-6 : U / 1000)
    }
  })

  it('is Markdown with a line for each dimension', () => {
    const lines = tableMarkdown(table).split('\n')
    for (const { name } of table.rows) expect(lines.some((l) => l.startsWith(`| \`${name}\` |`))).toBe(true)
  })

  it('is notes as annotations, which come back as the same notes', () => {
    const { edits } = fromWebAnnotations(toWebAnnotations(job), { ...job, notes: [] })
    const read = edits.reduce((now, edit) => applyEdit(now, edit).job, { ...job, notes: [] as Job['notes'] })
    expect(read.notes).toMatchObject([{ sheet: 'S1', text: 'Corner worn.', outline: job.notes[0]?.outline }])
  })
})

describe('figures that are hard to read', () => {
  it('are ranked by their strokes, by the scale and by the rest of the sheet', () => {
    const seen = patternLattice('1?-3/8')
    const read = readings(seen, { unit: 'in' })
    expect(read.figures.length).toBeGreaterThan(9)
    const { figures } = rankFigures({
      seen,
      scaled: [{ value: 14.4 * 25.4, u: 1 }],
      figures: ['2 1/8', '5/8', '14'],
      context: { unit: 'in' },
    })
    expect(figures[0]).toMatchObject({ text: '14 3/8"', value: 14.375 * 25.4 })
    expect(confusableGlyphs('3')).toContain('8')
  })
})
