import { fitLine, type LineFit } from '../../geometry/fit-line.ts'
import type { Pixel } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { picksOf } from '../../job/picks/picks-of.ts'
import { KNOWN, newSource } from '../../uncertainty/source.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { lineOfSeveral } from './line-of-several.ts'
import { alongLine, endsOf, lineMoves, type OwnLine, pooled } from './lines.ts'
import { byPerson, byScales, meanOfPeople } from './people.ts'
import { type Deviation, NO_SCATTER } from './repeated-picks.ts'

type LineMark = Mark & { kind: 'line' }

/** A line stays a line under every mapping, so it is fitted in pixels, where all picks are uncertain alike. */
export function lineFeature(mark: LineMark): Feature {
  const picks = picksOf(mark)
  if (mark.how === 'stroke' && picks.length > 1) return strokeLine(mark)
  const people = byPerson(picks).map((own) => own.map(({ pixels }) => pixels))
  const all = picks.map(({ pixels }) => pixels)
  const { ends, picking, ...told } = people.length > 1 ? lineOfSeveral(mark, people) : handLine(mark, all)
  return { ...feature(mark, ends, picking), ...told }
}

function feature(mark: LineMark, ends: readonly [Pixel, Pixel], picking: Move[]): Feature {
  return {
    mark: mark.id,
    kind: 'line',
    points: ends,
    closed: false,
    picking,
    draughting: draughtingOf(mark, 2),
  }
}

/** All pixels of all picks fitted together; picked again, they tell their own sigma by their scatter. */
function handLine(mark: LineMark, picks: readonly (readonly Pixel[])[]): OwnLine {
  const { sigma } = mark
  const line = fitLine(pooled(picks))
  const dof = line.n - 2
  const told = picks.length > 1 && line.squares / dof > NO_SCATTER
  const u = told ? Math.sqrt(line.squares / dof) : sigma
  const label = pickingOf(mark)
  const estimate = told ? { dof } : KNOWN
  return {
    ends: line.ends,
    picking: [
      ...lineMoves(line, newSource(label, estimate), u * line.offset, 0),
      ...lineMoves(line, newSource(label, estimate), 0, u * line.rotation),
    ],
    ...(line.n > 2 ? { scatter: { squares: line.squares, dof, sigma } } : {}),
  }
}

/** The mean of the lines that were found; what one fit leaves open stays, for the picture is the same each time. */
function strokeLine(mark: LineMark): Feature {
  const picks = picksOf(mark)
  const label = pickingOf(mark)
  const first = fitLine(picks[0]?.pixels ?? [])
  const all = fitLine(pooled(picks.map(({ pixels }) => pixels)))
  const groups = byPerson(picks).map((own) => own.map(({ pixels }) => alongLine(fitLine(pixels), all)))
  const looked = {
    alike: byScales([mark.sigma * first.offset, mark.sigma * first.rotation]),
    shown: ([offset = 0]: readonly number[]) => offset,
  }
  const { mean, deviations, people } = meanOfPeople(groups, looked, label)
  const [offset = 0, slope = 0] = mean
  return {
    ...feature(mark, endsOf(all, offset, slope), [
      ...lineMoves(all, newSource(label), mark.sigma * first.offset, 0),
      ...lineMoves(all, newSource(label), 0, mark.sigma * first.rotation),
      ...byEnd(deviations, all),
    ]),
    ...(first.n > 2 ? { scatter: { squares: first.squares, dof: first.n - 2, sigma: mark.sigma } } : {}),
    ...(people && { people }),
  }
}

const byEnd = (deviations: readonly Deviation[], line: LineFit<Pixel>): Move[] =>
  deviations.flatMap(({ source, by: [across = 0, turn = 0] }) => lineMoves(line, source, across, turn))
