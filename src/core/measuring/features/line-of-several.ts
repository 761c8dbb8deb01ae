import { fitLine } from '../../geometry/fit-line.ts'
import type { Pixel } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { compareSquares } from '../../uncertainty/analysis-of-variance.ts'
import { KNOWN, newSource } from '../../uncertainty/source.ts'
import { meanOf } from '../../uncertainty/type-a.ts'
import type { Move } from './feature.ts'
import { pickingOf } from './feature-sources.ts'
import { alongLine, endsOf, lineMoves, type OwnLine, pooled } from './lines.ts'
import { deviationsOf, NO_SCATTER } from './repeated-picks.ts'

/**
 * A line that several people picked by hand: the mean of each person's line. How far the people's lines lie apart is
 * held against how each person's picks lie about their own; where it is more, their scatter says how sure the mean is,
 * else that of all picks about one line. Either is worth as many degrees of freedom as people but one.
 * @param people the picks of each person, each pick all its pixels
 */
export function lineOfSeveral(
  mark: Mark & { kind: 'line' },
  people: readonly (readonly (readonly Pixel[])[])[],
): OwnLine {
  const label = pickingOf(mark)
  const all = fitLine(pooled(people.flat()))
  const lines = people.map((own) => fitLine(pooled(own)))
  const lies = lines.map((line) => alongLine(line, all))
  const [offset = 0, slope = 0] = meanOf(lies)
  const own = { squares: lines.reduce((sum, line) => sum + line.squares, 0), dof: all.n - 2 * lines.length }
  const more = { squares: Math.max(0, all.squares - own.squares), dof: 2 * (lines.length - 1) }
  const { f, p } = compareSquares(own, more)
  const s2 = all.squares / (all.n - 2)
  const by = f === null || f > 1 ? 'groups' : 'all'
  const told = s2 > NO_SCATTER
  const sigma = told ? Math.sqrt(s2) : mark.sigma
  const estimate = told ? { dof: lines.length - 1 } : KNOWN
  const share = 1 / lines.length
  const picking =
    by === 'groups'
      ? deviationsOf(lies, label).flatMap(({ source, by: [across = 0, turn = 0] }) =>
          lineMoves(all, source, across, turn),
        )
      : lines.flatMap((line): Move[] => {
          const [dx, dy] = all.direction
          // A person's line turns about its own middle.
          const t = (line.centroid[0] - all.centroid[0]) * dx + (line.centroid[1] - all.centroid[1]) * dy
          const turn = sigma * line.rotation * share
          return [
            ...lineMoves(all, newSource(label, estimate), sigma * line.offset * share, 0),
            ...lineMoves(all, newSource(label, estimate), -t * turn, turn),
          ]
        })
  const within = own.dof === 0 ? null : Math.sqrt(own.squares / own.dof)
  return {
    ends: endsOf(all, offset, slope),
    picking,
    ...(all.n > 2 ? { scatter: { squares: all.squares, dof: all.n - 2, sigma: mark.sigma } } : {}),
    people: {
      n: lines.length,
      s: Math.sqrt(s2),
      within,
      between: within === null ? null : beyond(lies, lines, within),
      p,
      by,
    },
  }
}

/** Standard deviation of where people's lines lie in their middle, beyond what each person's own picks leave open. */
function beyond(
  lies: readonly (readonly [number, number])[],
  lines: readonly { offset: number }[],
  within: number,
): number {
  const mean = lies.reduce((sum, [offset]) => sum + offset, 0) / lies.length
  const apart = lies.reduce((sum, [offset]) => sum + (offset - mean) ** 2, 0) / (lies.length - 1)
  const own = lines.reduce((sum, { offset }) => sum + (within * offset) ** 2, 0) / lines.length
  return Math.sqrt(Math.max(0, apart - own))
}
