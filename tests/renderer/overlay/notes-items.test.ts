import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel, type Screen, screen } from '../../../src/core/geometry/frames.ts'
import type { Selection } from '../../../src/renderer/bench/selection.ts'
import type { Station } from '../../../src/renderer/bench/stations.ts'
import { boxCorners, collide, type LetteredBox } from '../../../src/renderer/overlay/geometry-on-screen.ts'
import type { Laid } from '../../../src/renderer/overlay/laid.ts'
import { layOut, nearest } from '../../../src/renderer/overlay/lay-out.ts'
import { type KeptOff, layOutNote } from '../../../src/renderer/overlay/note-mark.ts'
import { type NoteItem, noteItems } from '../../../src/renderer/overlay/notes-items.ts'
import { sampleJob } from '../sample-job.ts'

const items = (station: Station, selection: Selection | null = null) =>
  noteItems({ job: sampleJob, sheet: 'sheet-1', station, selection })

const square: Screen[] = [screen(100, 100), screen(300, 100), screen(300, 300), screen(100, 300)]

/** The first note of the sample about a square, laid where the sheet is seen pixel for pixel. */
function laidNote(changed: Partial<NoteItem> = {}, around: Partial<KeptOff> = {}): Laid {
  const [item] = items('sheet')
  if (item === undefined) throw new Error('The sample has notes.')
  const outline = square.map(([x, y]) => pixel(x, y))
  return layOutNote(
    { ...item, outline, printed: [], ...changed },
    ([x, y]) => screen(x, y),
    () => ({ width: 8, height: 12 }),
    { taken: [], box: { width: 848, height: 490 }, ...around },
  )
}

const collides = ({ figure }: Laid, other: LetteredBox): boolean => figure !== null && collide(figure, other)

describe('Notes over a sheet', () => {
  it('are in brackets where the sheet is looked over, and numbers alone where it is measured', () => {
    expect(items('sheet').map(({ bracketed }) => bracketed)).toEqual(sampleJob.notes.map(() => true))
    expect(items('pick').map(({ bracketed }) => bracketed)).toEqual(sampleJob.notes.map(() => false))
    expect(items('pick', { kind: 'note', id: 'N1' }).find(({ number }) => number === '1')).toMatchObject({
      chosen: true,
      bracketed: true,
    })
  })

  it('are on their own sheet only, and one about a sheet as a whole is not drawn', () => {
    expect(noteItems({ job: sampleJob, sheet: 'sheet-2', station: 'sheet', selection: null })).toEqual([])
    const [note] = sampleJob.notes
    if (note === undefined) throw new Error('The sample has notes.')
    const job = { ...sampleJob, notes: [{ ...note, outline: [] as Pixel[] }] }
    expect(noteItems({ job, sheet: 'sheet-1', station: 'sheet', selection: null })).toEqual([])
  })

  it('stand in brackets at the corners of their region, and no further', () => {
    const strokes = laidNote().strokes.filter(({ fine }) => fine === true)
    const corners = strokes.slice(0, 4).map(({ points }) => points[1])
    expect(corners).toEqual(square)
    for (const { points } of strokes.slice(0, 4)) {
      expect(points).toHaveLength(3)
      for (const [x, y] of points) expect([x, y].every((c) => c >= 100 && c <= 300)).toBe(true)
    }
    // Between them the sheet is seen as it is.
    expect(strokes.slice(0, 4).flatMap(({ points }) => points)).not.toContainEqual(screen(200, 100))
  })

  it('are of as few lines however closely they are seen', () => {
    const far = laidNote({ outline: square.map(([x, y]) => pixel(1e6 * x, 1e6 * y)) })
    expect(far.strokes).toHaveLength(6)
    const [at] = laidNote({ outline: [pixel(5, 5)] }).strokes
    expect(at?.points.every(([x, y]) => x === 5 && y === 5)).toBe(true)
  })

  it('keep their number whatever lettering they lie on', () => {
    const camera = { centre: pixel(2600, 1700) as Pixel, zoom: 0.13, turn: radians(0), mirror: false }
    const twice = items('scale').flatMap((item) => [
      item,
      { ...item, about: { kind: 'note', id: 'N9' } as const },
    ])
    const laid = layOut(twice, camera, { width: 848, height: 490 }, () => ({ width: 8, height: 12 }))
    expect(laid.length).toBeGreaterThan(1)
    for (const { figure } of laid) expect(figure).not.toBeNull()
  })

  it('carry their number in a box on a leader, outside their region', () => {
    const { strokes, figure } = laidNote()
    const [leader, box] = strokes.slice(-2)
    expect(box).toMatchObject({ closed: true })
    expect(box?.points).toHaveLength(4)
    expect(leader?.points[0]).toEqual(screen(300, 100))
    expect(box?.points).toContainEqual(leader?.points[1])
    expect(figure?.text).toBe('1')
    for (const [x, y] of box?.points ?? []) expect(x > 300 || y < 100).toBe(true)
  })

  it('keep their number off printed figures, other lettering and the edge', () => {
    const upperRight = { centre: screen(330, 75), angle: 0, width: 80, height: 60 }
    expect(collides(laidNote(), upperRight)).toBe(true)
    expect(collides(laidNote({}, { taken: [upperRight] }), upperRight)).toBe(false)
    const printed = laidNote({ printed: [[290, 45, 80, 60]] })
    expect(collides(printed, upperRight)).toBe(false)
    // At the right edge there is no room for it on that side.
    const { figure } = laidNote({}, { box: { width: 305, height: 500 } })
    if (figure === null) throw new Error('A note has a number.')
    for (const [x, y] of boxCorners(figure)) {
      expect(x > 0 && x < 305).toBe(true)
      expect(y > 0 && y < 500).toBe(true)
    }
  })

  it('of a whole sheet that fills its window have their number in a corner of it', () => {
    const box = { width: 848, height: 490 }
    const outline = [pixel(0, 0), pixel(848, 0), pixel(848, 490), pixel(0, 490)]
    const { figure } = laidNote({ outline }, { box })
    if (figure === null) throw new Error('A note has a number.')
    for (const [x, y] of boxCorners(figure)) expect(x > 0 && x < 848 && y > 0 && y < 490).toBe(true)
  })

  it('are hit at their brackets, their leader and their number, and not where the sheet is bare', () => {
    const laid = laidNote()
    const number = laid.figure?.centre
    if (number === undefined) throw new Error('A note has a number.')
    expect(nearest([laid], number, 4)).toBe(laid.item)
    expect(nearest([laid], screen(100, 104), 4)).toBe(laid.item)
    expect(nearest([laid], screen(200, 200), 4)).toBeNull()
    expect(nearest([laid], screen(200, 100), 4)).toBeNull()
  })
})
