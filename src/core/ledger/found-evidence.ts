import type { DimensionKind, Evidence, Job } from '../job/types.ts'
import { angleInRadians } from '../quantity/angle.ts'
import { NotationError } from '../quantity/notation-error.ts'
import { parseAngle } from '../quantity/parse-angle.ts'
import { parseArea } from '../quantity/parse-area.ts'
import { parseCount } from '../quantity/parse-count.ts'
import { parseLength } from '../quantity/parse-length.ts'
import { KNOWN, newSource, type Source } from '../uncertainty/source.ts'
import { repeatedObservations } from '../uncertainty/type-a.ts'
import { fromTerms } from '../uncertainty/uncertain.ts'
import { type Weighed, without } from './weighed.ts'

type Found = Extract<Evidence, { basis: 'found' }>

interface Reading {
  value: number
  graduation: number
}

/** One source for each instrument: what it is off by is common to all that was measured with it. */
export type InstrumentSources = Map<string, Source>

/**
 * Evaluates readings taken on the original: the mean, its scatter (Type A), the resolution and the limit of error
 * of the instrument (rectangular; JCGM 100:2008, 4.3.7 and F.2.2.1), and an allowance for wear.
 * Without an instrument the last graduation of the readings stands for its resolution.
 */
export function foundEvidence(
  evidence: Found,
  kind: DimensionKind,
  job: Job,
  instruments: InstrumentSources,
): Weighed {
  try {
    return weigh(evidence, kind, job, instruments)
  } catch (error) {
    if (error instanceof NotationError) return without(evidence, error.message)
    throw error
  }
}

function weigh(evidence: Found, kind: DimensionKind, job: Job, instruments: InstrumentSources): Weighed {
  const readings = evidence.readings.map((text) => readReading(text, kind, job))
  const [head] = readings
  if (head === undefined) return without(evidence, 'It has no readings yet.')
  const { mean, s, n, dof } = repeatedObservations(readings.map((r) => r.value))
  const sources: Source[] = []
  const contributions: number[] = []
  const put = (source: Source, u: number): void => {
    if (u === 0) return
    sources.push(source)
    contributions.push(u)
  }
  if (s > 0) put(newSource('scatter of the readings on the original', { dof }), s / Math.sqrt(n))
  const instrument = job.instruments.find((i) => i.id === evidence.instrument)
  const resolution =
    instrument === undefined
      ? Math.max(...readings.map((r) => r.graduation))
      : readReading(instrument.resolution, kind, job).value
  put(
    newSource(`resolution of ${instrument?.name ?? 'the readings'}`, KNOWN, 'rectangular'),
    resolution / Math.sqrt(12),
  )
  if (instrument?.limit !== undefined) {
    const source =
      instruments.get(instrument.id) ??
      newSource(`limit of error of ${instrument.name}`, KNOWN, 'rectangular')
    instruments.set(instrument.id, source)
    put(source, readReading(instrument.limit, kind, job).value / Math.sqrt(3))
  }
  let value = mean
  if (evidence.worn !== undefined) {
    value += readReading(evidence.worn.loss, kind, job).value
    put(newSource('allowance for wear'), readReading(evidence.worn.u, kind, job).value)
  }
  const found = fromTerms(value, sources, contributions)
  return { evidence, adopted: found, compared: found, written: '', usable: true }
}

function readReading(text: string, kind: DimensionKind, job: Job): Reading {
  switch (kind) {
    case 'length': {
      const { mm, graduation } = parseLength(text, {
        unit: job.unit,
        signed: true,
        ...(job.gauge ? { gauge: job.gauge } : {}),
      })
      return { value: Number(mm), graduation: Number(graduation) }
    }
    case 'angle': {
      const angle = parseAngle(text, { signed: true })
      return { value: angleInRadians(angle), graduation: (Number(angle.graduation) * Math.PI) / 180 }
    }
    case 'area': {
      const { mm2, graduation } = parseArea(text)
      return { value: Number(mm2), graduation: Number(graduation) }
    }
    case 'count':
      return { value: parseCount(text), graduation: 0 }
  }
}
