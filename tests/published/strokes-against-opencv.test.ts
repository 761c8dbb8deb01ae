import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import { findCircle, findCrossing, findLine, findPoint } from '../../src/core/imaging/index.ts'
import type { RandomStream } from '../../src/core/uncertainty/random.ts'
import { across, circleSquare, lineSquare } from '../core/imaging/judge/errors.ts'
import { HIDDEN, many } from '../core/imaging/judge/many.ts'
import { type OpenCv, openCv } from '../core/imaging/rival/open-cv.ts'
import { rivalCircle } from '../core/imaging/rival/rival-circle.ts'
import { meeting, rivalLine } from '../core/imaging/rival/rival-line.ts'
import { circleCase } from '../core/imaging/simulate/circle-case.ts'
import { crossingCase } from '../core/imaging/simulate/crossing-case.ts'
import { lineCase } from '../core/imaging/simulate/line-case.ts'
import { type Kind, someLook } from '../core/imaging/simulate/look.ts'
import { pointCase } from '../core/imaging/simulate/point-case.ts'

/** Squared errors, pixels²: ours (undefined where no stroke was found), and by each way of OpenCV's. */
interface Squares {
  ours: number | undefined
  rivals: Record<string, number>
}

let cv: OpenCv
beforeAll(async () => {
  cv = (await openCv()).cv
})

/**
 * What OpenCV is told here that ours is not: whether the stroke is dark, and at a point which way it runs, to 2°. It
 * looks at 32 px of the stroke, as ours does.
 */
async function onPoint(kind: Kind, r: RandomStream, hidden: number): Promise<Squares> {
  const c = await pointCase(someLook(kind, r), r, hidden)
  const found = findPoint(c.window, c.rough)
  const told = c.direction + 0.035
  const end = (s: number): Pixel => pixel(c.rough[0] + s * Math.cos(told), c.rough[1] + s * Math.sin(told))
  const lines = rivalLine(cv, c.window, [end(-16), end(16)], c.look.dark)
  const at = (line: typeof lines.inked) => {
    const along =
      (c.rough[0] - line.place[0]) * Math.cos(line.direction) +
      (c.rough[1] - line.place[1]) * Math.sin(line.direction)
    const foot: Pixel = pixel(
      line.place[0] + along * Math.cos(line.direction),
      line.place[1] + along * Math.sin(line.direction),
    )
    return across(foot, c.place, c.direction) ** 2
  }
  return {
    ours: found.kind === 'none' ? undefined : across(found.pixel, c.place, c.direction) ** 2,
    rivals: { 'centroids, fitLine': at(lines.centroids), 'Otsu, fitLine': at(lines.inked) },
  }
}

async function onLine(kind: Kind, r: RandomStream, hidden: number): Promise<Squares> {
  const c = await lineCase(someLook(kind, r), r, hidden, [60, 140])
  const found = findLine(c.window, ...c.rough)
  const lines = rivalLine(cv, c.window, c.rough, c.look.dark)
  const square = (line: typeof lines.inked) => lineSquare(c, line.place, line.direction)
  const ours = () => {
    if (found.kind === 'none') return undefined
    const [[x, y], [u, v]] = found.ends
    return lineSquare(c, pixel(x, y), Math.atan2(v - y, u - x))
  }
  return {
    ours: ours(),
    rivals: { 'centroids, fitLine': square(lines.centroids), 'Otsu, fitLine': square(lines.inked) },
  }
}

async function onRound(kind: Kind, r: RandomStream, hidden: number, whole: boolean): Promise<Squares> {
  const look = someLook(kind, r)
  const c = await circleCase({ ...look, width: Math.min(6, look.width) }, r, {
    radii: [15, 60],
    whole,
    hidden,
  })
  const found = findCircle(c.window, c.rough, { whole })
  const rival = rivalCircle(cv, c.window, c.rough, c.sector, c.look.dark)
  return {
    ours: found.kind === 'none' ? undefined : circleSquare(c, found),
    rivals: {
      'centroids, solve': circleSquare(c, rival.solved),
      'centroids, fitEllipse': circleSquare(c, rival.ellipse),
    },
  }
}

/** OpenCV is told the two directions too; what is nearer to the crossing than the strokes are wide is left out. */
async function onCrossing(kind: Kind, r: RandomStream): Promise<Squares> {
  const c = await crossingCase(someLook(kind, r), r, 'X')
  const found = findCrossing(c.window, c.rough)
  const lines = c.directions.map((direction) => {
    const end = (s: number): Pixel =>
      pixel(c.rough[0] + s * Math.cos(direction), c.rough[1] + s * Math.sin(direction))
    return rivalLine(
      cv,
      c.window,
      [end(-30), end(30)],
      c.look.dark,
      (s) => Math.abs(s - 30) > c.look.width + 6,
    )
  })
  const square = ([x, y]: Pixel) => ((x - c.place[0]) ** 2 + (y - c.place[1]) ** 2) / 2
  const of = (way: 'centroids' | 'inked') => {
    const [a, b] = [lines[0]?.[way], lines[1]?.[way]]
    return a === undefined || b === undefined ? Number.NaN : square(meeting(a, b))
  }
  return {
    ours: found.kind === 'none' ? undefined : square(found.pixel),
    rivals: { 'centroids, fitLine': of('centroids'), 'Otsu, fitLine': of('inked') },
  }
}

/** Cases a class: points are quick, whole circles are not. */
const MANY = 150
const FEW = 60
const ROUND = 40
const CLASSES: [name: string, one: (r: RandomStream) => Promise<Squares>, cases?: number][] = [
  ['point, white noise', (r) => onPoint('noise', r, 0), MANY],
  ['point, blurred', (r) => onPoint('blur', r, 0), MANY],
  ['point, JPEG', (r) => onPoint('JPEG', r, 0), MANY],
  ['point, one bit', (r) => onPoint('one bit', r, 0), MANY],
  ['point, JPEG, a fifth hidden', (r) => onPoint('JPEG', r, HIDDEN), MANY],
  ['line, white noise', (r) => onLine('noise', r, 0)],
  ['line, blurred', (r) => onLine('blur', r, 0)],
  ['line, JPEG', (r) => onLine('JPEG', r, 0)],
  ['line, one bit', (r) => onLine('one bit', r, 0)],
  ['line, white noise, a fifth hidden', (r) => onLine('noise', r, HIDDEN)],
  ['circle, white noise', (r) => onRound('noise', r, 0, true), ROUND],
  ['circle, JPEG', (r) => onRound('JPEG', r, 0, true), ROUND],
  ['circle, one bit', (r) => onRound('one bit', r, 0, true), ROUND],
  ['circle, white noise, a fifth hidden', (r) => onRound('noise', r, HIDDEN, true), ROUND],
  ['arc, white noise', (r) => onRound('noise', r, 0, false)],
  ['arc, JPEG', (r) => onRound('JPEG', r, 0, false)],
  ['crossing, white noise', (r) => onCrossing('noise', r), MANY],
  ['crossing, JPEG', (r) => onCrossing('JPEG', r), MANY],
]

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length

const standardError = (values: readonly number[]): number => {
  const m = mean(values)
  return Math.sqrt(mean(values.map((v) => (v - m) ** 2)) / (values.length - 1))
}

const rms = (squares: readonly number[]): number =>
  Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / squares.length)

const table: string[] = []
afterAll(() => {
  process.stdout.write(`Strokes on the same pictures, rms error in pixels\n${table.join('\n')}\n`)
})

describe('strokes on the same pictures as OpenCV 4.12', () => {
  it.each(CLASSES)(
    '%s: at least as accurate as the better of its two ways, within one standard error of the comparison',
    async (name, one, cases = FEW) => {
      const squares = await many(cases, 31, one)
      const found = squares.filter((s) => s.ours !== undefined)
      const ours = rms(found.map((s) => s.ours ?? Number.NaN))
      const ways = Object.keys(squares[0]?.rivals ?? {})
      const theirs = ways.map((way) => rms(found.map((s) => s.rivals[way] ?? Number.NaN)))
      const told = ways.map((way, i) => `${way} ${theirs[i]?.toFixed(4)}`).join('  ')
      table.push(
        `  ${name.padEnd(38)} ours ${ours.toFixed(4)}  ${told}  cases ${cases}, not found ${cases - found.length}`,
      )
      expect(found.length).toBeGreaterThanOrEqual(Math.floor(0.98 * cases))
      // No more can be told from so many pictures: the standard error of the mean difference of squared errors.
      for (const way of ways) {
        const more = found.map((s) => (s.ours ?? Number.NaN) - (s.rivals[way] ?? Number.NaN))
        expect(mean(more), told).toBeLessThanOrEqual(standardError(more))
      }
    },
  )
})
