import type { Dimension, Evidence, Job } from '../../job/model/types.ts'
import { type Beside, besideFigure, likelihoodBeside } from '../../reading/ranking/beside-scale.ts'
import { densityOfValue } from '../../reading/ranking/density-of-size.ts'
import { variance } from '../../uncertainty/covariance.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { witnessesAmong } from '../adoption/witnesses.ts'
import type { Assessed } from '../assessment/assessed.ts'
import { type Assessment, assess } from '../assessment/assessment.ts'
import { valueOfCandidate } from '../evidence/candidate-spread.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'

type Printed = Extract<Evidence, { basis: 'printed' }>

/** One of the figures that a figure that is hard to read could be. */
export interface CarriedCandidate {
  readonly text: string
  /** mm, mm², radians or how many; null for what is no figure of the dimension's kind. */
  readonly value: number | null
  /** As it was given with the figure: by what the strokes and the sheet tell. */
  readonly given: number
  /** By the rest of the evidence of the dimension as well. */
  readonly probability: number
  /** The whole job, were this the figure, clear and adopted; null where it has no value. */
  readonly under: Assessment | null
}

/** A figure that is hard to read, with all that it could be, weighed by the rest of the evidence of its dimension. */
export interface CarriedFigure {
  readonly dimension: Dimension
  readonly evidence: Printed
  /** How many other pieces it was weighed by; those that say the same count as one. */
  readonly besides: number
  /** Likeliest first. With `none`, their probabilities sum to 1. */
  readonly candidates: readonly CarriedCandidate[]
  /** Probability that it is none of them. */
  readonly none: number
  /**
   * Mean and standard deviation over all candidates that have a value, by their probabilities, with what each is uncertain
   * by as a figure; null where none has one.
   */
  readonly mixture: { readonly value: number; readonly u: number } | null
}

/** Whether a piece of evidence is a figure that is hard to read, with a list of what it could be. */
export const isCarried = (evidence: Evidence): evidence is Printed =>
  evidence.basis === 'printed' &&
  evidence.withdrawn === undefined &&
  evidence.legibility === 'doubtful' &&
  (evidence.candidates ?? []).length > 0

/**
 * The figures of a dimension that are hard to read, each with what it could be: how likely each is by all that is known of
 * the dimension, and the job as it would stand with it. Who reads it from there sees what each would do to the sums.
 * Nothing is adopted by this. Probabilities follow from Bayes' rule with `likelihoodBeside`.
 */
export function carriedFigures(assessed: Assessed, assessment: Assessment): CarriedFigure[] {
  return assessed.dimension.evidence
    .filter(isCarried)
    .map((evidence) => carriedFigure(evidence, assessed, assessment))
}

function carriedFigure(evidence: Printed, assessed: Assessed, assessment: Assessment): CarriedFigure {
  const { dimension, evaluated } = assessed
  const { job } = assessment
  const all = withItself(evidence, dimension, job)
  const given = all.reduce((sum, { probability }) => sum + probability, 0)
  const pieces = piecesBeside(evidence, evaluated, all)
  const beside = besideFigure(pieces)
  const likelihood = likelihoodOf(beside)
  // What is left is none of these, and may be of any size.
  const over = Math.max(0, 1 - given)
  const ofOthers = over * (beside === null ? 1 : densityOfValue(beside.value, dimension.kind))
  const weights = all.map(({ probability, value }) => probability * likelihood(value))
  const sum = weights.reduce((total, weight) => total + weight, ofOthers)
  const norm = sum > 0 ? 1 / sum : 0
  const candidates = all.map(
    ({ text, value, probability }, i): CarriedCandidate => ({
      text,
      value,
      given: probability,
      probability: (weights[i] ?? 0) * norm,
      under: value === null ? null : assessedWith(text, evidence, dimension, assessment),
    }),
  )
  const mixture = mixtureOf(candidates, evidence, dimension)
  candidates.sort((a, b) => b.probability - a.probability)
  return { dimension, evidence, besides: pieces.length, candidates, none: ofOthers * norm, mixture }
}

interface Given {
  readonly text: string
  readonly value: number | null
  readonly probability: number
}

/**
 * The candidates with their values and, where it is a figure and not among them, what the figure was read as: it has the
 * probability that they leave. More than 1 together were not normed.
 */
function withItself({ text, candidates = [] }: Printed, dimension: Dimension, job: Job): Given[] {
  const sum = Math.max(
    1,
    candidates.reduce((total, { probability }) => total + probability, 0),
  )
  const all = candidates.map(
    (one): Given => ({
      text: one.text,
      value: valueOfCandidate(one.text, dimension, job),
      probability: one.probability / sum,
    }),
  )
  const left = 1 - all.reduce((total, { probability }) => total + probability, 0)
  const value = valueOfCandidate(text, dimension, job)
  const isThere = value === null || all.some((one) => one.value === value)
  return isThere || left <= LEFT_BY_ROUNDING ? all : [...all, { text, value, probability: left }]
}

const LEFT_BY_ROUNDING = 1e-9

/** A value that moves with more than half of a figure says nothing of it, as among witnesses. */
const HALF = 0.5

/** What the rest of the evidence is compared by, as far as it says something of its own. */
function piecesBeside(
  evidence: Printed,
  evaluated: readonly EvaluatedEvidence[],
  all: readonly Given[],
): Uncertain[] {
  const size = all.find(({ value }) => value !== null)?.value ?? Number.NaN
  const others = evaluated.filter(
    (w) =>
      w.evidence.id !== evidence.id &&
      w.usable &&
      w.limit === undefined &&
      !((w.shareOfFigure?.(size) ?? 0) > HALF),
  )
  return witnessesAmong(others).witnesses.flatMap(({ compared }) => (compared === null ? [] : [compared]))
}

/** What is no figure of its kind is not what is drawn there, whatever else speaks for it. */
const likelihoodOf =
  (beside: Beside | null) =>
  (value: number | null): number => {
    if (beside === null) return 1
    return value === null ? 0 : likelihoodBeside(beside, value)
  }

/** The job with a figure read so, clear and adopted: only what rests on it is assessed anew. */
function assessedWith(
  text: string,
  evidence: Printed,
  dimension: Dimension,
  assessment: Assessment,
): Assessment {
  const { job, unit, figuresAs } = assessment
  const { candidates: _, legibility: __, ...rest } = evidence
  const read: Printed = { ...rest, text }
  const decided: Dimension = {
    ...dimension,
    adopt: evidence.id,
    evidence: dimension.evidence.map((one) => (one === evidence ? read : one)),
  }
  const dimensions = job.dimensions.map((one) => (one === dimension ? decided : one))
  return assess({ ...job, dimensions }, { unit, figuresAs }, assessment)
}

function mixtureOf(
  candidates: readonly CarriedCandidate[],
  { id }: Printed,
  { name }: Dimension,
): CarriedFigure['mixture'] {
  let [sum, first, second] = [0, 0, 0]
  const valued = candidates.flatMap(({ value, probability, under }) =>
    value === null || under === null ? [] : [{ value, probability, under }],
  )
  for (const { value, probability } of valued) {
    sum += probability
    first += probability * value
  }
  if (!(sum > 0)) return null
  const mean = first / sum
  for (const { value, probability, under } of valued) {
    const piece = under.dimensions.get(name)?.evaluated.find((w) => w.evidence.id === id)
    const own = piece?.compared == null ? 0 : variance(piece.compared)
    second += probability * ((value - mean) ** 2 + own)
  }
  return { value: mean, u: Math.sqrt(second / sum) }
}
