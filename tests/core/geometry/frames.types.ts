import { algebraicCircle } from '../../../src/core/geometry/algebraic-circle.ts'
import {
  degrees,
  type Radians,
  radians,
  toDegrees,
  toRadians,
} from '../../../src/core/geometry/angle-units.ts'
import { distanceBetween } from '../../../src/core/geometry/distance-between.ts'
import { fitCircle } from '../../../src/core/geometry/fit-circle.ts'
import { fitLine } from '../../../src/core/geometry/fit-line.ts'
import {
  type Paper,
  type Pixel,
  paper,
  pixel,
  pointLike,
  type Screen,
  screen,
  type True,
  truePoint,
  type Vector,
  vectorLike,
} from '../../../src/core/geometry/frames.ts'
import { crossesItself, pathLength, polygonArea } from '../../../src/core/geometry/polygon.ts'
import { findPoint, searchWindow } from '../../../src/core/imaging/index.ts'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import { type ViewFrame, viewFrame } from '../../../src/core/mapping/view-frame.ts'
import { featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { angleInRadians } from '../../../src/core/quantity/angle.ts'
import { formatAngle } from '../../../src/core/quantity/format/format-angle.ts'
import { formatLength } from '../../../src/core/quantity/format/format-length.ts'
import { parseAngle } from '../../../src/core/quantity/parse/parse-angle.ts'
import { parseLength } from '../../../src/core/quantity/parse/parse-length.ts'
import { extent, matrixOf, toPixel, toScreen, zoomedAbout } from '../../../src/renderer/camera/camera.ts'

/** Takes what is of type T, and nothing else. */
const needs = <T>(value: T): T => value

const frame: ViewFrame = { origin: pixel(100, 100), extent: 80, grain: radians(0.02) }
const { apply, invert } = MAPPINGS.projective
const theta = [0.2, 0, 0.21, 0.01, 0]
const camera = { centre: pixel(100, 100), zoom: 2, turn: radians(0), mirror: false }
const box = { width: 300, height: 200 }
const round = [pixel(0, 0), pixel(10, 0), pixel(5, 5)] as const
const onPaper = [paper(0, 0), paper(10, 0), paper(5, 5)] as const
const inTrue = [truePoint(0, 0), truePoint(10, 0), truePoint(5, 5)] as const
const grey = { left: 0, top: 0, width: 40, height: 40, data: new Uint8Array(1600).fill(255) }
const onMark = { id: 'M1', sheet: 'S1', how: 'hand', sigma: 1, kind: 'point' } as const
const feature = featureOf({ ...onMark, pixel: pixel(1, 2) })

/** What is to be told apart: a call that is right, and the same with what must not be mixed, which does not compile. */
type Mix = readonly [right: () => unknown, wrong: () => unknown]

export const MIXES: Readonly<Record<string, Mix>> = {
  'a pixel as a place on the screen': [
    () => toPixel(camera, box, screen(1, 2)),
    // @ts-expect-error
    () => toPixel(camera, box, pixel(1, 2)),
  ],
  'a place on the screen as a pixel': [
    () => toScreen(camera, box, pixel(1, 2)),
    // @ts-expect-error
    () => toScreen(camera, box, screen(1, 2)),
  ],
  'a place on the screen as a pixel by spread': [
    () => apply(theta, toPixel(camera, box, screen(1, 2)), frame),
    // @ts-expect-error
    () => apply(theta, [...screen(1, 2)], frame),
  ],
  'a place on the screen as a pixel by its coordinates': [
    () => needs<Pixel>(toPixel(camera, box, screen(1, 2))),
    // @ts-expect-error
    () => needs<Pixel>([screen(1, 2)[0], screen(1, 2)[1]]),
  ],
  'zooming about a pixel': [
    () => zoomedAbout(camera, box, box, screen(1, 2), 2),
    // @ts-expect-error
    () => zoomedAbout(camera, box, box, pixel(1, 2), 2),
  ],
  'a camera over a place on the screen': [
    () => matrixOf({ ...camera, centre: pixel(1, 2) }, box),
    // @ts-expect-error
    () => matrixOf({ ...camera, centre: screen(1, 2) }, box),
  ],
  'paper as true size': [
    () => invert(theta, truePoint(1, 2), frame),
    // @ts-expect-error
    () => invert(theta, paper(1, 2), frame),
  ],
  'true size as paper': [
    () => needs<Paper>(paper(1, 2)),
    // @ts-expect-error
    () => needs<Paper>(truePoint(1, 2)),
  ],
  'a true point mapped again': [
    () => apply(theta, invert(theta, apply(theta, pixel(1, 2), frame).point, frame), frame),
    // @ts-expect-error
    () => apply(theta, apply(theta, pixel(1, 2), frame).point, frame),
  ],
  'a pixel taken back to a pixel': [
    () => invert(theta, apply(theta, pixel(1, 2), frame).point, frame),
    // @ts-expect-error
    () => invert(theta, pixel(1, 2), frame),
  ],
  'paper through a mapping': [
    () => apply(theta, pixel(1, 2), frame),
    // @ts-expect-error
    () => apply(theta, paper(1, 2), frame),
  ],
  'a view about a true point': [
    () => apply(theta, pixel(1, 2), { ...frame, origin: pixel(1, 2) }),
    // @ts-expect-error
    () => apply(theta, pixel(1, 2), { ...frame, origin: truePoint(1, 2) }),
  ],
  'a distance from a pixel to paper': [
    () => distanceBetween(pixel(1, 2), pixel(3, 4)),
    // @ts-expect-error
    () => distanceBetween(pixel(1, 2), paper(3, 4)),
  ],
  'a distance from paper to the screen': [
    () => distanceBetween(paper(1, 2), paper(3, 4)),
    // @ts-expect-error
    () => distanceBetween(paper(1, 2), screen(3, 4)),
  ],
  'a distance from a true point to a pixel': [
    () => distanceBetween(truePoint(1, 2), apply(theta, pixel(3, 4), frame).point),
    // @ts-expect-error
    () => distanceBetween(truePoint(1, 2), pixel(3, 4)),
  ],
  'a circle through pixels and paper': [
    () => fitCircle(round),
    // @ts-expect-error
    () => fitCircle([...round, paper(5, -5)]),
  ],
  'a circle through points of three frames': [
    () => algebraicCircle([pixel(0, 0), pixel(1, 0), pixel(0, 1)]),
    // @ts-expect-error
    () => algebraicCircle([pixel(0, 0), paper(1, 0), truePoint(0, 1)]),
  ],
  'a line through pixels and true points': [
    () => fitLine([truePoint(0, 0), truePoint(1, 1)]),
    // @ts-expect-error
    () => fitLine([pixel(0, 0), truePoint(1, 1)]),
  ],
  'an area between frames': [
    () => polygonArea(onPaper),
    // @ts-expect-error
    () => polygonArea([...onPaper, truePoint(0, 5)]),
  ],
  'a length between frames': [
    () => pathLength(inTrue, true),
    // @ts-expect-error
    () => pathLength([...inTrue, pixel(0, 5)], true),
  ],
  'a polygon of two frames that crosses itself': [
    () => crossesItself(round),
    // @ts-expect-error
    () => crossesItself([...round, screen(0, 5)]),
  ],
  'the extent of pixels and places on the screen': [
    () => extent(round),
    // @ts-expect-error
    () => extent([...round, screen(0, 5)]),
  ],
  'the centre of a circle of pixels as a true point': [
    () => invert(theta, fitCircle(inTrue).centre, frame),
    // @ts-expect-error
    () => invert(theta, fitCircle(round).centre, frame),
  ],
  'the end of a line on paper as a pixel': [
    () => apply(theta, fitLine(round).ends[0], frame),
    // @ts-expect-error
    () => apply(theta, fitLine(onPaper).ends[0], frame),
  ],
  'the direction of a line as a point': [
    () => apply(theta, fitLine(round).centroid, frame),
    // @ts-expect-error
    () => apply(theta, fitLine(round).direction, frame),
  ],
  'a point as a way': [
    () => needs<Vector<True>>(fitLine(inTrue).direction),
    // @ts-expect-error
    () => needs<Vector<True>>(fitLine(inTrue).centroid),
  ],
  'a way on the screen as one in pixels': [
    () => needs<Vector<Pixel>>(vectorLike(pixel(0, 0), 1, 0)),
    // @ts-expect-error
    () => needs<Vector<Pixel>>(vectorLike(screen(0, 0), 1, 0)),
  ],
  'a point like a pixel on the screen': [
    () => needs<Screen>(pointLike(screen(0, 0), 1, 2)),
    // @ts-expect-error
    () => needs<Screen>(pointLike(pixel(0, 0), 1, 2)),
  ],
  'two plain numbers as a pixel': [
    () => apply(theta, pixel(1, 2), frame),
    // @ts-expect-error
    () => apply(theta, [1, 2], frame),
  ],
  'an object with x and y as a pixel': [
    () => findPoint(grey, pixel(20, 20)),
    // @ts-expect-error
    () => findPoint(grey, { x: 20, y: 20 }),
  ],
  'a stroke looked for on the screen': [
    () => findPoint(grey, toPixel(camera, box, screen(20, 20))),
    // @ts-expect-error
    () => findPoint(grey, screen(20, 20)),
  ],
  'a window about true points': [
    () => searchWindow([pixel(1, 2)], 'point'),
    // @ts-expect-error
    () => searchWindow([truePoint(1, 2)], 'point'),
  ],
  'a mark on paper': [
    () => featureOf({ ...onMark, pixel: pixel(1, 2) }),
    // @ts-expect-error
    () => featureOf({ ...onMark, pixel: paper(1, 2) }),
  ],
  'a view of features on the screen': [
    () => viewFrame([feature], radians(0)),
    // @ts-expect-error
    () => viewFrame([{ points: [screen(1, 2)] }], radians(0)),
  ],

  'radians turned into radians': [
    () => toRadians(degrees(30)),
    // @ts-expect-error
    () => toRadians(radians(0.5)),
  ],
  'degrees turned into degrees': [
    () => toDegrees(radians(0.5)),
    // @ts-expect-error
    () => toDegrees(degrees(30)),
  ],
  'a plain number as radians': [
    () => toDegrees(radians(Math.PI / 6)),
    // @ts-expect-error
    () => toDegrees(Math.PI / 6),
  ],
  'a plain number as degrees': [
    () => toRadians(degrees(30)),
    // @ts-expect-error
    () => toRadians(30),
  ],
  'degrees added to radians': [
    () => needs<Radians>(radians(radians(0.5) + toRadians(degrees(30)))),
    // @ts-expect-error
    () => needs<Radians>(radians(0.5) + degrees(30)),
  ],
  'an angle written in degrees': [
    () => formatAngle(radians(0.5)),
    // @ts-expect-error
    () => formatAngle(degrees(30)),
  ],
  'the uncertainty of an angle in degrees': [
    () => formatAngle(radians(0.5), { uncertainty: radians(0.01) }),
    // @ts-expect-error
    () => formatAngle(radians(0.5), { uncertainty: degrees(1) }),
  ],
  'the grain of a view in degrees': [
    () => viewFrame([feature], toRadians(degrees(2))),
    // @ts-expect-error
    () => viewFrame([feature], degrees(2)),
  ],
  'the grain of a view as a plain number': [
    () => needs<ViewFrame>({ ...frame, grain: radians(0.03) }),
    // @ts-expect-error
    () => needs<ViewFrame>({ ...frame, grain: 2 }),
  ],
  'mapping along a grain in degrees': [
    () => apply(theta, pixel(1, 2), { ...frame, grain: toRadians(degrees(2)) }),
    // @ts-expect-error
    () => apply(theta, pixel(1, 2), { ...frame, grain: degrees(2) }),
  ],
  'the grain of a document in radians': [
    () => needs<Edit>({ do: 'change-view', id: 'V1', set: { grain: degrees(2) } }),
    // @ts-expect-error
    () => needs<Edit>({ do: 'change-view', id: 'V1', set: { grain: radians(0.03) } }),
  ],
  'how a sheet of a document lies in radians': [
    () => needs<Edit>({ do: 'change-sheet', id: 'S1', set: { straight: degrees(2) } }),
    // @ts-expect-error
    () => needs<Edit>({ do: 'change-sheet', id: 'S1', set: { straight: radians(0.03) } }),
  ],
  'a camera turned by degrees': [
    () => matrixOf({ ...camera, turn: toRadians(degrees(90)) }, box),
    // @ts-expect-error
    () => matrixOf({ ...camera, turn: degrees(90) }, box),
  ],
  'an angle that was read as degrees': [
    () => formatAngle(angleInRadians(parseAngle('30°'))),
    // @ts-expect-error
    () => toRadians(angleInRadians(parseAngle('30°'))),
  ],
  'a length as an angle': [
    () => formatAngle(parseAngle('30°')),
    // @ts-expect-error
    () => formatAngle(parseLength('3"')),
  ],
  'an angle as a length': [
    () => formatLength(parseLength('3"'), { unit: 'in' }),
    // @ts-expect-error
    () => formatLength(parseAngle('30°'), { unit: 'in' }),
  ],
}
