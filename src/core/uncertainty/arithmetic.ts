import type { Uncertain } from './uncertain.ts'

/**
 * Computing with one kind of number: uncertain ones by first order, or plain ones under one draw of all sources.
 * What is worked out in terms of it is worked out the same way in both.
 */
export interface Arithmetic<N> {
  /** A number without uncertainty. */
  exact(value: number): N
  /** What an uncertain number is here: itself, or its realisation. */
  of(x: Uncertain): N
  toNumber(x: N): number
  add(a: N, b: N): N
  subtract(a: N, b: N): N
  multiply(a: N, b: N): N
  divide(a: N, b: N): N
  /** factor · a, the factor exact. */
  scale(a: N, factor: number): N
  /** a to the power of b, either uncertain; the base must be positive where the exponent is uncertain. */
  power(a: N, b: N): N
  /** f(x), with its derivative. */
  through(x: N, f: (x: number) => number, derivative: (x: number) => number): N
  /** f of several numbers, with its derivative by each of them. */
  combine(
    args: readonly N[],
    f: (values: readonly number[]) => number,
    gradient: (values: readonly number[]) => readonly number[],
  ): N
}

/** Σ weights[i] · terms[i], the weights exact. */
export const weightedSum = <N>(
  { combine }: Arithmetic<N>,
  terms: readonly N[],
  weights: readonly number[],
): N =>
  combine(
    terms,
    (values) => values.reduce((sum, value, i) => sum + (weights[i] ?? 0) * value, 0),
    () => weights,
  )
