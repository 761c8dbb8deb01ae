import { element } from '../linear-algebra/element.ts'
import type { Arithmetic } from './arithmetic.ts'
import type { RandomStream } from './random.ts'
import type { DistributionShape, Source, VarianceEstimate } from './source.ts'
import type { Uncertain } from './uncertain.ts'

/** One realisation of every source that is asked for, each with unit variance (as far as it has one). */
export type Draw = (source: Source) => number

/**
 * A fresh realisation: normal or rectangular as the source says; where its variance is an estimate, Student's t,
 * with one and the same estimate of variance for all sources that rest on it.
 * Source: JCGM 101:2008, 6.4.2, 6.4.7 and 6.4.9.
 */
export function newDraw(random: RandomStream): Draw {
  const drawn = new Map<Source, number>()
  const spread = new Map<VarianceEstimate, number>()
  return (source) => {
    const known = drawn.get(source)
    if (known !== undefined) return known
    const value = unitDrawn(source.shape, random) * spreadOf(source.estimate, spread, random)
    drawn.set(source, value)
    return value
  }
}

/** A value of mean 0 and variance 1. */
export const unitDrawn = (shape: DistributionShape, random: RandomStream): number =>
  shape === 'rectangular' ? Math.sqrt(3) * (2 * random.uniform() - 1) : random.normal()

/** By how much a variance that is an estimate is off in this realisation, once for all that rests on it. */
export function spreadOf(
  estimate: VarianceEstimate,
  spread: Map<VarianceEstimate, number>,
  random: RandomStream,
): number {
  if (!Number.isFinite(estimate.dof)) return 1
  const known = spread.get(estimate)
  if (known !== undefined) return known
  const dof = Math.max(1, Math.round(estimate.dof))
  let chi2 = 0
  for (let i = 0; i < dof; i++) chi2 += random.normal() ** 2
  const factor = Math.sqrt(dof / chi2)
  spread.set(estimate, factor)
  return factor
}

/** The value with its sources realised, to first order. */
export function realise(x: Uncertain, draw: Draw): number {
  let value = x.value
  for (let i = 0; i < x.sources.length; i++)
    value += draw(element(x.sources, i)) * (x.coefficients[i] ?? Number.NaN)
  return value
}

/** Arithmetic under one draw: every uncertain number is what its sources make of it, and nothing is linearised. */
export const underDraw = (draw: Draw): Arithmetic<number> => ({
  exact: (value) => value,
  of: (x) => realise(x, draw),
  toNumber: (x) => x,
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  multiply: (a, b) => a * b,
  divide: (a, b) => a / b,
  scale: (a, factor) => factor * a,
  power: (a, b) => a ** b,
  through: (x, f) => f(x),
  combine: (args, f) => f(args),
})
