import { addScaled, addTo } from '../linear-algebra/add-to.ts'
import { element } from '../linear-algebra/element.ts'
import { type DistributionShape, KNOWN, newSource, type Source, type VarianceEstimate } from './source.ts'

/**
 * A value together with its sensitivity to every source of error:
 * error = Σ coefficients[i] · ε(sources[i]), the ε independent with unit variance.
 * So coefficient = c·u of JCGM 100:2008, 5.1.3, kept apart by source.
 */
export interface Uncertain {
  readonly value: number
  /** Sorted by `order`, no source twice. */
  readonly sources: readonly Source[]
  readonly coefficients: readonly number[]
}

const NO_SOURCES: readonly Source[] = []
const NO_COEFFICIENTS: readonly number[] = []

/** A number without uncertainty. */
export function exact(value: number): Uncertain {
  return { value, sources: NO_SOURCES, coefficients: NO_COEFFICIENTS }
}

/** A value with one new source of standard uncertainty u. */
export function measured(
  value: number,
  u: number,
  label: string,
  estimate: VarianceEstimate = KNOWN,
  shape: DistributionShape = 'normal',
): Uncertain {
  return u === 0 ? exact(value) : fromTerms(value, [newSource(label, estimate, shape)], [u])
}

/**
 * A value from sources and coefficients in any order; a source named twice counts with the sum.
 * @param sources and coefficients: same length
 */
export function fromTerms(
  value: number,
  sources: readonly Source[],
  coefficients: ArrayLike<number>,
): Uncertain {
  const n = sources.length
  let sorted = true
  for (let i = 1; i < n && sorted; i++) sorted = orderAt(sources, i - 1) < orderAt(sources, i)
  if (sorted) return { value, sources, coefficients: Array.from(coefficients) }
  const index = Array.from({ length: n }, (_, i) => i).sort(
    (i, j) => orderAt(sources, i) - orderAt(sources, j),
  )
  const outSources: Source[] = []
  const outCoefficients: number[] = []
  for (const i of index) {
    const source = element(sources, i)
    const last = outSources.length - 1
    if (outSources[last] === source) addTo(outCoefficients, last, element(coefficients, i))
    else {
      outSources.push(source)
      outCoefficients.push(element(coefficients, i))
    }
  }
  return { value, sources: outSources, coefficients: outCoefficients }
}

const orderAt = (sources: readonly Source[], i: number): number => sources[i]?.order ?? Number.NaN

/**
 * A value whose error is Σ weights[i] · error(terms[i]): first-order propagation.
 * Source: JCGM 100:2008, eq. 13, with the correlations carried by shared sources.
 */
export function propagate(value: number, terms: readonly Uncertain[], weights: ArrayLike<number>): Uncertain {
  let sources = NO_SOURCES
  let coefficients: number[] = []
  for (let t = 0; t < terms.length; t++) {
    const term = terms[t]
    const weight = weights[t] ?? Number.NaN
    if (term === undefined || weight === 0 || term.sources.length === 0) continue
    if (sources.length === 0) {
      sources = term.sources
      coefficients = term.coefficients.map((c) => weight * c)
    } else if (sources === term.sources) {
      // Parameters of one calibration share their list of sources: no merge is needed.
      addScaled(coefficients, weight, term.coefficients)
    } else {
      const merged = merge(sources, coefficients, term, weight)
      sources = merged.sources
      coefficients = merged.coefficients
    }
  }
  return { value, sources, coefficients }
}

function merge(aSources: readonly Source[], a: readonly number[], term: Uncertain, weight: number) {
  const bSources = term.sources
  const b = term.coefficients
  // Marks are mostly made after the references of their view, so one list mostly follows the other.
  if (orderAt(aSources, a.length - 1) < orderAt(bSources, 0)) {
    return { sources: aSources.concat(bSources), coefficients: a.concat(b.map((c) => weight * c)) }
  }
  const sources: Source[] = []
  const coefficients: number[] = []
  let i = 0
  let j = 0
  while (i < a.length && j < b.length) {
    const sourceA = aSources[i]
    const sourceB = bSources[j]
    if (sourceA === undefined || sourceB === undefined) break
    if (sourceA.order <= sourceB.order) {
      const both = sourceA === sourceB
      sources.push(sourceA)
      coefficients.push((a[i++] ?? Number.NaN) + (both ? weight * (b[j++] ?? Number.NaN) : 0))
    } else {
      sources.push(sourceB)
      coefficients.push(weight * (b[j++] ?? Number.NaN))
    }
  }
  for (; i < a.length; i++) {
    sources.push(element(aSources, i))
    coefficients.push(a[i] ?? Number.NaN)
  }
  for (; j < b.length; j++) {
    sources.push(element(bSources, j))
    coefficients.push(weight * (b[j] ?? Number.NaN))
  }
  return { sources, coefficients }
}
