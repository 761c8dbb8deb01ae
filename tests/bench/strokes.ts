/**
 * Strokes against the Cramér–Rao bound: the whole table by class, by width, contrast and noise, to radii of 400 px; places
 * without a stroke; and the times of each search. Run by `node scripts/run-ts.mjs tests/bench/strokes.ts [cases]`.
 */
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import { findCircle, findCrossing, findLine, findPoint } from '../../src/core/imaging/index.ts'
import type { RandomStream } from '../../src/core/uncertainty/random.ts'
import { circleTrial } from '../core/imaging/judge/circle-trial.ts'
import { crossingTrial } from '../core/imaging/judge/crossing-trial.ts'
import { edgeTrial } from '../core/imaging/judge/edge-trial.ts'
import { judgePoint } from '../core/imaging/judge/judge-point.ts'
import { lineTrial } from '../core/imaging/judge/line-trial.ts'
import { HIDDEN, many } from '../core/imaging/judge/many.ts'
import { pointTrial } from '../core/imaging/judge/point-trial.ts'
import { GREY, row, score } from '../core/imaging/judge/score.ts'
import { caseStream } from '../core/imaging/simulate/case-stream.ts'
import { circleCase } from '../core/imaging/simulate/circle-case.ts'
import { crossingCase } from '../core/imaging/simulate/crossing-case.ts'
import { lineCase } from '../core/imaging/simulate/line-case.ts'
import { type Kind, someLook } from '../core/imaging/simulate/look.ts'
import { pointCase } from '../core/imaging/simulate/point-case.ts'
import { EMPTY_PLACES, withoutStroke } from '../core/imaging/simulate/without-stroke.ts'

const CASES = Number(process.argv[2] ?? 200)
const KINDS: readonly Kind[] = ['noise', 'blur', 'grain', 'JPEG', 'one bit']

async function byClass(): Promise<void> {
  const rows = []
  for (const hidden of [0, HIDDEN]) {
    const after = hidden > 0 ? ', a fifth hidden' : ''
    for (const kind of KINDS)
      rows.push(row(`point, ${kind}${after}`, await pointTrial(kind, CASES, 51, hidden)))
    for (const kind of KINDS)
      rows.push(row(`line, ${kind}${after}`, await lineTrial(kind, CASES, 52, hidden)))
    for (const whole of [true, false]) {
      for (const kind of KINDS) {
        const s = await circleTrial(kind, Math.ceil(CASES / 3), 53, { whole, hidden, radii: [15, 400] })
        const name = `${whole ? 'circle' : 'arc'}, ${kind}${after}`
        for (const part of ['along', 'centre', 'radius'] as const) rows.push(row(`${name}: ${part}`, s[part]))
      }
    }
  }
  for (const kind of KINDS) rows.push(row(`edge, ${kind}`, await edgeTrial(kind, CASES, 54)))
  for (const meeting of ['X', 'T', 'L'] as const) {
    for (const kind of KINDS) {
      rows.push(
        row(`crossing ${meeting}, ${kind}`, await crossingTrial(kind, Math.ceil(CASES / 2), 55, [meeting])),
      )
    }
  }
  console.table(rows)
}

async function byWidthContrastNoise(): Promise<void> {
  const rows = []
  for (const width of [2, 4, 8, 12]) {
    for (const contrast of [38, 100, 220]) {
      for (const ratio of [2, 3, 6, 20]) {
        const outcomes = await many(Math.ceil(CASES / 4), 56, async (r) => {
          const look = { ...someLook('noise', r), width, contrast, noise: contrast / ratio, blur: 0.6 }
          const ground = look.dark ? 127 + contrast / 2 : 127 - contrast / 2
          return judgePoint(await pointCase({ ...look, ground }, r))
        })
        rows.push(
          row(`width ${width}, contrast ${contrast}, ${ratio} times the noise`, score(outcomes, GREY)),
        )
      }
    }
  }
  console.table(rows)
}

async function withoutStrokes(): Promise<void> {
  const middle: Pixel = pixel(44, 44)
  const rows = []
  for (const kind of EMPTY_PLACES) {
    const found = { point: 0, line: 0, circle: 0, crossing: 0 }
    for (let i = 0; i < CASES; i++) {
      const window = await withoutStroke(
        kind,
        88,
        caseStream(57_000_000 + 10_000 * EMPTY_PLACES.indexOf(kind) + i),
      )
      if (findPoint(window, middle).kind !== 'none') found.point++
      if (findLine(window, pixel(24, 40), pixel(64, 48)).kind !== 'none') found.line++
      if (i % 4 > 0) continue
      if (findCircle(window, [pixel(26, 44), pixel(44, 26), pixel(62, 44)]).kind !== 'none') found.circle += 4
      if (findCrossing(window, middle).kind !== 'none') found.crossing += 4
    }
    rows.push({ place: kind, cases: CASES, ...found })
  }
  console.log('Strokes found where there are none (circles and crossings: every fourth place, times four)')
  console.table(rows)
}

/** Processor time in milliseconds when warm: other programs do not count. */
async function times(): Promise<void> {
  const rows: object[] = []
  const time = async <T>(
    name: string,
    n: number,
    make: (r: RandomStream) => Promise<T>,
    find: (c: T) => unknown,
  ) => {
    const cases = await many(n, 58, make)
    for (const c of cases) find(c)
    const spent = cases
      .map((c) => {
        const before = process.cpuUsage()
        find(c)
        return process.cpuUsage(before).user / 1000
      })
      .sort((a, b) => a - b)
    rows.push({ search: name, middle: spent[n >> 1], 'nine in ten': spent[Math.floor(0.9 * n)] })
  }
  const look = (r: RandomStream, width?: number) => {
    const some = someLook('noise', r)
    return width === undefined ? some : { ...some, width }
  }
  await time(
    'point (to be under 5 ms)',
    60,
    (r) => pointCase(look(r), r),
    (c) => findPoint(c.window, c.rough),
  )
  await time(
    'line of 500 px (under 50 ms)',
    20,
    (r) => lineCase(look(r), r, 0, [500, 500]),
    (c) => findLine(c.window, ...c.rough),
  )
  await time(
    'crossing',
    30,
    (r) => crossingCase(look(r), r, 'X'),
    (c) => findCrossing(c.window, c.rough),
  )
  for (const radius of [40, 400]) {
    await time(
      `circle of ${radius} px radius`,
      10,
      (r) => circleCase(look(r, 4), r, { radii: [radius, radius], whole: true }),
      (c) => findCircle(c.window, c.rough),
    )
  }
  console.table(rows)
}

await times()
await byClass()
await byWidthContrastNoise()
await withoutStrokes()
