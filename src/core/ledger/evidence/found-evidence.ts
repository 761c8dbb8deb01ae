import type { Conventions } from '../../job/model/conventions.ts'
import type { Evidence, Instrument } from '../../job/model/types.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { KNOWN, newSource, type Source } from '../../uncertainty/source.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'
import { fromTerms } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { asStated, type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import { readReading } from './found-reading.ts'
import type { FoundScatter } from './found-scatter.ts'

type Found = Extract<Evidence, { basis: 'found' }>

/** What readings on the original are evaluated with. */
export interface FoundContext {
  conventions: Conventions
  /** What they were taken with; undefined where none is named. */
  instrument: Instrument | undefined
  /** One source for each instrument: what it is off by is common to all that was measured with it. */
  limitOf(instrument: Instrument): Source
  /** Of the dimension's readings with that instrument. */
  scatter: FoundScatter | undefined
}

/** What an instrument is off by. */
export const limitOfError = ({ name }: Instrument): Source =>
  newSource(`limit of error of ${name}`, KNOWN, 'rectangular')

/**
 * Evaluates readings taken on the original: the mean, its scatter (Type A), the resolution and the limit of error
 * of the instrument (rectangular; JCGM 100:2008, 4.3.7 and F.2.2.1), and an allowance for wear.
 * Without an instrument the last graduation of the readings stands for its resolution.
 * @throws NotationError for a reading that can't be read
 */
export function foundEvidence(
  evidence: Found,
  kind: QuantityKind,
  { conventions, instrument, limitOf, scatter }: FoundContext,
): EvaluatedEvidence {
  const readings = evidence.readings.map((text) => readReading(text, kind, conventions))
  const [head] = readings
  if (head === undefined) return without(evidence, reason('evidence.without-readings'))
  const { mean, n } = repeatedObservations(readings.map((r) => r.value))
  const sources: Source[] = []
  const contributions: number[] = []
  const put = (source: Source, u: number): void => {
    if (u === 0) return
    sources.push(source)
    contributions.push(u)
  }
  if (scatter !== undefined) {
    put(newSource('scatter of the readings on the original', scatter.estimate), scatter.s / Math.sqrt(n))
  }
  const resolution =
    instrument === undefined
      ? Math.max(...readings.map((r) => r.graduation))
      : readReading(instrument.resolution, kind, conventions).value
  put(
    newSource(`resolution of ${instrument?.name ?? 'the readings'}`, KNOWN, 'rectangular'),
    resolution / Math.sqrt(12),
  )
  if (instrument?.limit !== undefined) {
    put(limitOf(instrument), readReading(instrument.limit, kind, conventions).value / Math.sqrt(3))
  }
  let value = mean
  if (evidence.worn !== undefined) {
    value += readReading(evidence.worn.loss, kind, conventions).value
    put(newSource('allowance for wear'), readReading(evidence.worn.u, kind, conventions).value)
  }
  const found = fromTerms(value, sources, contributions)
  const workOut = asStated(found, found)
  const coverage = expand(found)
  return { evidence, adopted: found, compared: found, coverage, workOut, written: '', usable: true }
}
