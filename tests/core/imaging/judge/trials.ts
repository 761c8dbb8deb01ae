import { beforeAll, describe, it } from 'vitest'
import type { Meeting } from '../simulate/crossing-case.ts'
import type { Kind } from '../simulate/look.ts'
import { circleTrial, type RoundScores } from './circle-trial.ts'
import { crossingTrial } from './crossing-trial.ts'
import { edgeTrial } from './edge-trial.ts'
import { lineTrial } from './line-trial.ts'
import { HIDDEN } from './many.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './must-pass.ts'
import { pointTrial } from './point-trial.ts'
import type { Score } from './score.ts'

/** How many strokes of each sort are looked for in scans of one class; left out where there is no trial of it. */
export interface Trials {
  points?: number
  pointsPartlyHidden?: number
  edges?: number
  lines?: number
  linesPartlyHidden?: number
  circles?: number
  circlesPartlyHidden?: number
  arcs?: number
  crossings?: readonly Meeting[]
}

const CROSSINGS = 60
/** Of one trial, on a machine that does much else, milliseconds. */
const PATIENCE = 240_000

/**
 * The trials of scans of one class: each must be as near to the truth as the Cramér–Rao bound asks, tell its own
 * uncertainty, and be found.
 * Signal to noise of 3 to 30 a pixel, strokes 2 to 12 px wide, any direction, 15 to 100 % contrast; lines 60 to 200 px long,
 * radii of 15 to 90 px, arcs of 60° and more. More in tests/bench/strokes.ts.
 */
export function trials(kind: Kind, of: Trials): void {
  const one = (name: string, cases: number | undefined, trial: (cases: number) => Promise<Score>) => {
    if (cases !== undefined) scored(name, () => trial(cases))
  }
  one('a point on a stroke', of.points, (n) => pointTrial(kind, n, 11))
  one('a point on a stroke, a fifth hidden', of.pointsPartlyHidden, (n) => pointTrial(kind, n, 11, HIDDEN))
  one('either edge of a stroke, its width, contrast and blur unknown', of.edges, (n) =>
    edgeTrial(kind, n, 12),
  )
  one('a straight stroke, all along it', of.lines, (n) => lineTrial(kind, n, 13))
  one('a straight stroke, a fifth hidden', of.linesPartlyHidden, (n) => lineTrial(kind, n, 13, HIDDEN))
  const round = (name: string, cases: number | undefined, whole: boolean, hidden = 0) => {
    if (cases !== undefined) scoredRound(name, () => circleTrial(kind, cases, 14, { whole, hidden }))
  }
  round('a circle', of.circles, true)
  round('a circle, a fifth hidden', of.circlesPartlyHidden, true, HIDDEN)
  round('an arc', of.arcs, false)
  const names = { X: 'cross', T: 'meet, one ending on the other,', L: 'meet at their ends' }
  for (const meeting of of.crossings ?? [])
    scored(`where two strokes ${names[meeting]}`, () => crossingTrial(kind, CROSSINGS, 15, [meeting]))
}

function scored(name: string, trial: () => Promise<Score>): void {
  describe(name, () => {
    let s: Score
    beforeAll(async () => {
      s = await trial()
    }, PATIENCE)
    it('is as near to the truth as the Cramér–Rao bound asks', () => mustBeAccurate(s))
    it('tells its own uncertainty', () => mustBeHonest(s))
    it('is found', () => mustBeFound(s))
  })
}

function scoredRound(name: string, trial: () => Promise<RoundScores>): void {
  describe(name, () => {
    let scores: RoundScores
    beforeAll(async () => {
      scores = await trial()
    }, PATIENCE)
    it('is as near to the truth, all round, as the Cramér–Rao bound asks', () => mustBeAccurate(scores.along))
    it('has its centre as near as the bound asks', () => mustBeAccurate(scores.centre))
    it('has its radius as near as the bound asks', () => mustBeAccurate(scores.radius))
    it('tells its own uncertainty', () => mustBeHonest(scores.along))
    it('is found', () => mustBeFound(scores.along))
  })
}
