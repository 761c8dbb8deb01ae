import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel, screen } from '../../../src/core/geometry/frames.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import { wholeSheet } from '../../../src/renderer/camera/camera.ts'
import { displayList } from '../../../src/renderer/overlay/display-list.ts'
import { collide, readable } from '../../../src/renderer/overlay/geometry-on-screen.ts'
import type { Item } from '../../../src/renderer/overlay/items.ts'
import { lanesOf } from '../../../src/renderer/overlay/lanes.ts'
import { layOut, nearest } from '../../../src/renderer/overlay/lay-out.ts'
import { enlarged, enlargement, isSeen, residualsOf } from '../../../src/renderer/overlay/residuals.ts'
import { type SizeSpan, spanOf } from '../../../src/renderer/overlay/span.ts'
import { way } from '../../../src/renderer/strokes/edge-sides.ts'
import { sampleJob, sampleTable } from '../sample-job.ts'

const lettering = (text: string) => ({ width: 7 * text.length, height: 16 })
const BOX = { width: 1200, height: 720 }

const job: Job = sampleJob
const table: Table = sampleTable
const shown = (over: Partial<Parameters<typeof displayList>[0]>) =>
  displayList({ job, table, sheet: 'sheet-1', station: 'pick', selection: null, ...over })
const sizes = (items: Item[]) => items.filter((item) => item.kind === 'size')
const laidOut = (items: Item[], turn = 0) => {
  const start = { centre: pixel(0, 0), zoom: 1, turn: radians(turn), mirror: false }
  return layOut(items, wholeSheet(start, BOX, { width: 5200, height: 3420 }), BOX, lettering)
}

describe('what is drawn over the sheet', () => {
  it('is only the outlines of the views and the notes at the station Sheet', () => {
    expect(new Set(shown({ station: 'sheet' }).map(({ kind }) => kind))).toEqual(new Set(['view', 'note']))
  })

  it('is references and their residuals at the station Scale, and no dimension', () => {
    const items = shown({ station: 'scale' })
    expect(items.some(({ kind }) => kind === 'residual')).toBe(true)
    expect(sizes(items).every(({ about }) => about.kind === 'reference')).toBe(true)
  })

  it('shows which basis governs by the line: printed full, scaled dashed, derived dotted', () => {
    const lines = new Map(
      sizes(shown({})).map(({ about, line }) => [about.kind === 'dimension' ? about.name : '', line]),
    )
    const expected = {
      printed: 'full',
      scaled: 'dashed',
      found: 'double',
      derived: 'dotted',
      mean: 'full and dashed',
    }
    let told = 0
    for (const row of table.rows) {
      const line = lines.get(row.name)
      if (line === undefined || row.basis === null) continue
      expect(line).toBe(expected[row.basis])
      told++
    }
    expect(told).toBeGreaterThan(5)
  })

  it('letters each view with its name alone, and the chosen one with its scale and how far the scan is from it', () => {
    const views = shown({}).filter((item) => item.kind === 'view')
    expect(views.map(({ title }) => title)).toContain('Elevation, half in section')
    expect(views.flatMap(({ lines }) => lines)).toEqual([])
    const chosen = shown({ selection: { kind: 'view', id: 'elevation' } })
    const title = chosen.find((item) => item.kind === 'view' && item.chosen)
    expect(title?.kind === 'view' && title.lines.join('; ')).toMatch(
      /^scale 3" = 1'-0" stated; on the scan \d\.\d % ± \d\.\d % smaller along and \d\.\d % ± \d\.\d % smaller across$/,
    )
  })

  it('states the factor of the residuals only where they are drawn', () => {
    const lines = (station: 'scale' | 'pick') =>
      shown({ station }).flatMap((item) => (item.kind === 'view' ? item.lines : []))
    expect(lines('scale').filter((line) => /^misfits drawn × (1|2|5)0*$/.test(line))).toHaveLength(3)
    expect(lines('pick').filter((line) => line.includes('residuals'))).toEqual([])
  })

  it('puts what is chosen on top, with its uncertainty, whatever the station', () => {
    const items = shown({ station: 'sheet', selection: { kind: 'dimension', name: 'flange_bore' } })
    const chosen = items.filter((item) => item.chosen)
    expect(items.slice(-chosen.length)).toEqual(chosen)
    const size = sizes(chosen)[0]
    expect(size?.text).toMatch(/^7\.977" ± 0\.031", near 8"$/)
  })

  it('still draws marks and outlines while no table is worked out', () => {
    const items = shown({ table: null })
    expect(items.some(({ kind }) => kind === 'mark')).toBe(true)
    expect(items.some(({ kind }) => kind === 'view')).toBe(true)
  })

  it('marks the reference that was set aside by word', () => {
    const words = sizes(shown({ station: 'scale' })).map(({ wrong }) => wrong)
    expect(words.filter((word) => word === 'set aside')).toHaveLength(1)
  })
})

describe('residual arrows', () => {
  const ends = [
    { kind: 'point' as const, at: pixel(0, 0) },
    { kind: 'point' as const, at: pixel(1000, 0) },
  ]
  const row = { id: 'R1', stated: 10.01, fitted: 10, U: 0.1, residual: 0.01, w: 1, suspect: false }
  const reference = { id: 'R1', kind: 'distance' as const, marks: ['a', 'b'] as [string, string], size: '10' }

  it('stand at the second end, along the reference, as long as the residual is in pixels', () => {
    const [arrow] = residualsOf(reference, ends, [row])
    expect(arrow?.at).toEqual(pixel(1000, 0))
    expect(arrow?.vector[0]).toBeCloseTo(1, 9)
    expect(arrow?.vector[1]).toBeCloseTo(0, 9)
  })

  it('are enlarged by a round number that keeps the longest within six hundredths of the view', () => {
    const arrow = (x: number, length: number) => ({
      at: pixel(x, 0),
      vector: way(length, 0),
      wrong: '',
      setAside: false,
    })
    const larger = enlargement([arrow(0, 0.7), arrow(2000, 1.1)])
    expect(larger.factor).toBe(100)
    expect(1.1 * larger.factor).toBeLessThanOrEqual(0.06 * 2000)
  })

  it('that are no more than rounding are not enlarged until they look like something', () => {
    const rounding = { at: pixel(2000, 0), vector: way(0.02, 0), wrong: '', setAside: false }
    expect(isSeen(rounding)).toBe(false)
    expect(enlargement([rounding, { ...rounding, at: pixel(0, 0) }]).factor).toBe(1)
    expect(isSeen({ ...rounding, vector: way(0, 0.2) })).toBe(true)
  })

  it('are not all made small by one that was set aside; that one is cut off and says so', () => {
    const small = {
      at: pixel(0, 0),
      vector: way(1, 0),
      wrong: '',
      setAside: false,
    }
    const gross = {
      at: pixel(2000, 0),
      vector: way(300, 0),
      wrong: 'set aside',
      setAside: true,
    }
    const larger = enlargement([small, gross])
    expect(larger.factor).toBe(100)
    expect(enlarged(small, larger)).toEqual({ vector: way(100, 0), cut: false })
    const cut = enlarged(gross, larger)
    expect(cut.cut).toBe(true)
    expect(cut.vector[0]).toBeCloseTo(120, 9)
  })
})

describe('where a measure is shown', () => {
  const segment = (a: Pixel, b: Pixel) => ({
    kind: 'segment' as const,
    ends: [a, b] as [Pixel, Pixel],
  })

  it('sets a spacing square to the line', () => {
    const span = spanOf('spacing', [
      segment(pixel(0, 0), pixel(100, 0)),
      segment(pixel(20, 50), pixel(60, 50)),
    ])
    expect(span).toMatchObject({ kind: 'straight', from: pixel(40, 50), to: pixel(40, 0) })
  })

  it('sets an angle at the crossing of its lines', () => {
    const span = spanOf('angle', [segment(pixel(10, 0), pixel(20, 0)), segment(pixel(0, 10), pixel(0, 20))])
    expect(span).toMatchObject({
      kind: 'angle',
      vertex: pixel(0, 0),
      sides: [
        [pixel(10, 0), pixel(20, 0)],
        [pixel(0, 10), pixel(0, 20)],
      ],
    })
  })

  it('shows the vertical angle that the lines enclose when both were picked towards the vertex', () => {
    const span = spanOf('angle', [segment(pixel(20, 0), pixel(10, 0)), segment(pixel(0, 20), pixel(0, 10))])
    const ends = span?.kind === 'angle' ? span.sides.flat() : []
    expect(ends.every(([x, y]) => x >= -1e-9 && y >= -1e-9)).toBe(true)
  })

  it('shows no angle between parallel lines', () => {
    expect(
      spanOf('angle', [segment(pixel(0, 0), pixel(10, 0)), segment(pixel(0, 5), pixel(10, 5))]),
    ).toBeNull()
  })
})

describe('dimension lines beside each other', () => {
  const line = (y: number, from: number, to: number): SizeSpan => ({
    kind: 'straight',
    from: pixel(from, y),
    to: pixel(to, y),
    offset: true,
    arrows: 'both',
  })

  it('take lanes where they run over the same stretch, and one lane where they follow each other', () => {
    expect(lanesOf([line(0, 0, 100), line(1, 50, 200), line(0, 210, 300)])).toEqual([0, 1, 0])
  })

  it('need no lanes far apart', () => {
    expect(lanesOf([line(0, 0, 100), line(400, 0, 100)])).toEqual([0, 0])
  })
})

describe('lettering', () => {
  it('never lies on other lettering, but for what is chosen', () => {
    for (const turn of [0, 0.4, Math.PI / 2]) {
      const figures = laidOut(shown({}), turn).flatMap(({ figure }) => (figure === null ? [] : [figure]))
      figures.forEach((a, i) => {
        for (const b of figures.slice(i + 1)) expect(collide(a, b)).toBe(false)
      })
      expect(figures.length).toBeGreaterThan(8)
    }
  })

  it('is always there for what is chosen', () => {
    for (const { name, evidence } of job.dimensions) {
      if (!evidence.some(({ basis, withdrawn }) => basis === 'scaled' && withdrawn === undefined)) continue
      const row = table.rows.find((one) => one.name === name)
      if (row?.value === null) continue
      const laid = laidOut(shown({ selection: { kind: 'dimension', name } }))
      expect(laid.some(({ item, figure }) => item.chosen && item.kind === 'size' && figure !== null)).toBe(
        true,
      )
    }
  })

  it('is read from below or from the right', () => {
    for (let angle = -7; angle < 7; angle += 0.1) {
      const read = readable(angle)
      expect(read).toBeGreaterThan(-Math.PI / 2 - 0.021)
      expect(read).toBeLessThan(Math.PI / 2)
      expect(Math.abs(Math.sin(read - angle))).toBeLessThan(1e-9)
    }
  })
})

describe('choosing on the sheet', () => {
  it('finds the dimension whose figure was clicked', () => {
    const laid = laidOut(shown({}))
    const one = laid.find(
      ({ item, figure }) => item.kind === 'size' && item.about.kind === 'dimension' && figure,
    )
    expect(nearest(laid, one?.figure?.centre ?? screen(0, 0), 8)?.about.kind).toBe('dimension')
  })

  it('finds nothing on bare paper', () => {
    expect(nearest(laidOut(shown({})), screen(2, 2), 8)).toBeNull()
  })

  it('prefers a mark to the outline of the view it lies on', () => {
    const about = { kind: 'mark', id: 'M' } as const
    const laid = layOut(
      [
        {
          kind: 'view',
          about: { kind: 'view', id: 'V' },
          chosen: false,
          outline: [pixel(0, 0), pixel(100, 0), pixel(100, 100)],
          title: 'V',
          lines: [],
        },
        { kind: 'mark', about, chosen: false, shape: { kind: 'point', at: pixel(50, 4) } },
      ],
      { centre: pixel(50, 50), zoom: 1, turn: radians(0), mirror: false },
      { width: 100, height: 100 },
      lettering,
    )
    expect(nearest(laid, screen(40, 0), 8)?.about).toEqual(about)
  })
})
