import { beforeAll, describe, it } from 'vitest'
import { circleTrial, type RoundScores } from './judge/circle-trial.ts'
import { HIDDEN } from './judge/many.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Kind } from './simulate/look.ts'

/** Radius 15 to 90 px here, to 400 px in tests/bench/strokes.ts; arcs of 60° and more. */
const CLASSES: [name: string, kind: Kind, whole: boolean, hidden: number, cases: number][] = [
  ['a circle in white noise', 'noise', true, 0, 30],
  ['a blurred circle', 'blur', true, 0, 30],
  ['a circle on grained paper', 'grain', true, 0, 30],
  ['a circle through JPEG at quality 70', 'JPEG', true, 0, 25],
  ['a circle in white noise, a fifth hidden', 'noise', true, HIDDEN, 50],
  ['a blurred circle, a fifth hidden', 'blur', true, HIDDEN, 50],
  ['a circle in one bit, a fifth hidden', 'one bit', true, HIDDEN, 30],
  ['an arc in white noise', 'noise', false, 0, 40],
  ['an arc in one bit', 'one bit', false, 0, 30],
]

describe.each(CLASSES)('%s', (_, kind, whole, hidden, cases) => {
  let scores: RoundScores
  beforeAll(async () => {
    scores = await circleTrial(kind, cases, 14, { whole, hidden })
  })
  it('is as near to the truth, all round, as the Cramér–Rao bound asks', () => mustBeAccurate(scores.along))
  it('has its centre as near as the bound asks', () => mustBeAccurate(scores.centre))
  it('has its radius as near as the bound asks', () => mustBeAccurate(scores.radius))
  it('tells its own uncertainty', () => mustBeHonest(scores.along))
  it('is found', () => mustBeFound(scores.along))
})
