import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Evidence, Instrument } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { KNOWN, newSource, type Source } from '../../uncertainty/source.ts'
import { fromTerms } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { asStated, type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import { readReading } from './found-reading.ts'
import { foundRemarks } from './found-remarks.ts'
import { guessedScatter, scatterOf } from './found-scatter.ts'
import { poolOf } from './found-spread.ts'
import { slipAmong } from './reading-slip.ts'
import { emptyPool, type ScatterPool } from './scatter-pools.ts'
import { unnamedLimit } from './unnamed-instrument.ts'
import { weighReadings } from './weigh-readings.ts'

type Found = Extract<Evidence, { basis: 'found' }>

/** What readings on the original are evaluated with. */
export interface FoundContext {
  conventions: Conventions
  /** What they were taken with; undefined where none is named. */
  instrument: Instrument | undefined
  /** One source for each instrument: what it is off by is common to all that was measured with it. */
  limitOf(instrument: Instrument): Source
  /** What the job knows of how such readings scatter, by the name of the pool; undefined where it has none. */
  scatterOf(pool: string): ScatterPool | undefined
}

/** What an instrument is off by. */
export const limitOfError = ({ name }: Instrument): Source => offBy(name)

const offBy = (name: string): Source => newSource(`limit of error of ${name}`, KNOWN, 'rectangular')

/**
 * Evaluates readings taken on the original: their mean, how they scatter (pooled over the job), the resolution and the
 * limit of error of the instrument (rectangular; JCGM 100:2008, 4.3.7 and F.2.2.1), and an allowance for wear.
 * Without an instrument the last graduation of each reading stands for its resolution, and a usual limit for its own.
 * @throws NotationError for a reading that can't be read
 */
export function foundEvidence(
  evidence: Found,
  dimension: Pick<Dimension, 'kind' | 'name'>,
  context: FoundContext,
): EvaluatedEvidence {
  const { kind } = dimension
  const { conventions, instrument } = context
  const readings = evidence.readings.map((text) => ({ text, ...readReading(text, kind, conventions) }))
  if (readings.length === 0) return without(evidence, reason('evidence.without-readings'))
  const measure = (text: string): number => readReading(text, kind, conventions).value
  const resolution = instrument === undefined ? undefined : measure(instrument.resolution)
  const limit =
    instrument === undefined
      ? unnamedLimit(kind)
      : instrument.limit === undefined
        ? 0
        : measure(instrument.limit)
  const steps = readings.map(({ graduation }) => resolution ?? graduation)
  const slip = slipAmong(readings, Math.max(limit, ...steps))
  if (slip !== undefined) return without(evidence, slip)
  const guess = guessedScatter(limit, Math.min(...steps))
  const pool = context.scatterOf(poolOf(evidence, dimension)) ?? emptyPool()
  const scatter = scatterOf(evidence, pool, guess)
  const { mean, spread, byStep } = weighReadings(
    readings.map(({ value }, i) => ({ value, step: element(steps, i) })),
    scatter?.s ?? 0,
  )
  const sources: Source[] = []
  const contributions: number[] = []
  const put = (source: Source, u: number): void => {
    if (u === 0) return
    sources.push(source)
    contributions.push(u)
  }
  if (scatter !== undefined) {
    put(newSource('scatter of the readings on the original', scatter.estimate), scatter.s * spread)
  }
  for (const [step, share] of byStep) {
    put(
      newSource(`resolution of ${instrument?.name ?? 'the readings'}`, KNOWN, 'rectangular'),
      (share * step) / Math.sqrt(12),
    )
  }
  if (limit !== 0) {
    const off = instrument === undefined ? offBy('the unnamed instrument') : context.limitOf(instrument)
    put(off, limit / Math.sqrt(3))
  }
  let value = mean
  if (evidence.worn !== undefined) {
    value += measure(evidence.worn.loss)
    put(newSource('allowance for wear'), measure(evidence.worn.u))
  }
  const found = fromTerms(value, sources, contributions)
  const workOut = asStated(found, found)
  const coverage = expand(found)
  const remarks = foundRemarks(readings, instrument, scatter, limit)
  const said = remarks.length === 0 ? {} : { remarks }
  return { evidence, adopted: found, compared: found, coverage, workOut, written: '', ...said, usable: true }
}
