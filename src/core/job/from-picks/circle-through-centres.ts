import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import { pixel } from '../../geometry/frames.ts'
import { firstPlaces } from '../picks/picks-of.ts'
import { markByHand } from './mark-by-hand.ts'
import { type PicksRefused, toThousandth, type UnnamedMark } from './picked-mark.ts'

/**
 * The circle through the centres of circles, as a bolt circle goes through the middles of its holes. Each centre is as sure
 * as the picks of its circle make it: of n places evenly round a rim, each with standard uncertainty σ, √(2 / n) σ in x and in y (least
 * squares, GUM 5.1.2).
 * @param circles three or more; what is no circle is left aside
 * @throws GeometryError when the places on one of them lie on one line
 */
export function circleThroughCentres(circles: readonly UnnamedMark[]): UnnamedMark | PicksRefused {
  const rims = circles.filter(({ kind }) => kind === 'circle')
  const centres = rims.map((rim) => {
    const places = firstPlaces(rim)
    const { centre } = algebraicCircle(places)
    return {
      at: pixel(toThousandth(centre[0]), toThousandth(centre[1])),
      sigma: rim.sigma * Math.sqrt(2 / places.length),
    }
  })
  const sigmas = centres.map(({ sigma }) => sigma)
  const byHand = markByHand(
    'circle',
    centres.map(({ at }) => at),
    sigmas,
  )
  if ('refused' in byHand || rims.some(({ how }) => how === 'hand')) return byHand
  return { ...byHand, how: 'stroke', sigma: toThousandth(Math.max(...sigmas)) }
}
