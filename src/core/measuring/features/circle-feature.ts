import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import { fitCircle } from '../../geometry/fit-circle.ts'
import { type Pixel, pixel, vectorLike } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { everyPoint } from './every-point.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { deviationsOf, meanOf, NO_SCATTER } from './repeated-picks.ts'
import { roundScatter } from './round-scatter.ts'

type CircleMark = Mark & { kind: 'circle' }

/** A circle of the part is no circle on a shrunk sheet; it is fitted in true size, so every pick is kept. */
export function circleFeature(mark: CircleMark): Feature {
  const { repeats } = mark
  if (repeats === undefined || repeats.length === 0) return feature(mark, mark.pixels, plain(mark))
  return mark.how === 'stroke' ? strokeCircle(mark, repeats) : handCircle(mark, repeats)
}

const plain = (mark: CircleMark): Move[] => everyPoint(mark.pixels.length, mark.sigma, pickingOf(mark), KNOWN)

function feature(mark: CircleMark, points: readonly Pixel[], picking: Move[]): Feature {
  return {
    mark: mark.id,
    kind: 'circle',
    points,
    closed: true,
    centre: algebraicCircle(points).centre,
    picking,
    draughting: draughtingOf(mark, 3),
  }
}

/** All points of all picks on one circle, their sigma from how they scatter about it. */
function handCircle(mark: CircleMark, repeats: readonly Pixel[][]): Feature {
  const points = [...mark.pixels, ...repeats.flat()]
  const { squares, dof } = roundScatter(points)
  const told = dof > 0 && squares / dof > NO_SCATTER
  const sigma = told ? Math.sqrt(squares / dof) : mark.sigma
  return {
    ...feature(mark, points, everyPoint(points.length, sigma, pickingOf(mark), told ? { dof } : KNOWN)),
    ...(dof > 0 ? { scatter: { squares, dof, sigma: mark.sigma } } : {}),
  }
}

/** The first pick moved to the mean of the circles found; what one fit leaves open stays. */
function strokeCircle(mark: CircleMark, repeats: readonly Pixel[][]): Feature {
  const found = [mark.pixels, ...repeats].map((pixels) => {
    const { centre, radius } = fitCircle(pixels)
    return [centre[0], centre[1], radius] as const
  })
  const [cx = 0, cy = 0, radius = 0] = found[0] ?? []
  const [mx = 0, my = 0, mr = 0] = meanOf(found)
  const outward = mark.pixels.map((at) => {
    const [dx, dy] = [at[0] - cx, at[1] - cy]
    const far = Math.hypot(dx, dy) || 1
    return vectorLike(at, dx / far, dy / far)
  })
  const moved = (i: number, [x, y, r]: readonly [number, number, number]): [number, number] => [
    x + r * (outward[i]?.[0] ?? 0),
    y + r * (outward[i]?.[1] ?? 0),
  ]
  const points = mark.pixels.map(([x, y], i): Pixel => {
    const [dx, dy] = moved(i, [mx - cx, my - cy, mr - radius])
    return pixel(x + dx, y + dy)
  })
  const scatter = deviationsOf(found, pickingOf(mark)).flatMap(({ source, by: [x = 0, y = 0, r = 0] }) =>
    points.map((_, point): Move => {
      const [dx, dy] = moved(point, [x, y, r])
      return { source, point, dx, dy }
    }),
  )
  return feature(mark, points, [...plain(mark), ...scatter])
}
