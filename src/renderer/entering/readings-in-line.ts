import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import { newIdentity } from '../../core/job/ids/new-identity.ts'
import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { readReading } from '../../core/ledger/evidence/found-reading.ts'
import { foundUnderstood } from './found-understood.ts'
import { hasCommas } from './has-commas.ts'
import { type Drafted, drafted } from './new-evidence.ts'
import { splitReadings } from './split-readings.ts'

/** Readings on the original. */
export type Found = Extract<Evidence, { basis: 'found' }>

/** Stands with readings that were taken out of the table, for evidence is withdrawn and never removed. */
const TAKEN_OUT = 'Taken out in the table.'

/**
 * The readings of a dimension that are written in one line: the newest that count by an instrument, or the newest of
 * all where there are none by it.
 */
export function readingsInLine(dimension: Dimension, instrument: string | undefined): Found | undefined {
  let newest: Found | undefined
  for (const piece of dimension.evidence) {
    if (piece.basis !== 'found' || piece.withdrawn !== undefined) continue
    if (newest === undefined || piece.instrument === instrument || newest.instrument !== instrument) {
      newest = piece
    }
  }
  return newest
}

/** Readings as one line that is read back as the same ones. */
export function lineOf({ readings }: Found, dimension: Dimension): string {
  const spaced = readings.join(' ')
  const again = splitReadings(spaced, dimension.kind)
  const same = again.length === readings.length && again.every((one, i) => one === readings[i])
  return same ? spaced : readings.join('; ')
}

/** What a line of readings makes of the job: evidence, or its withdrawal. */
type LineEdit = { edit: Edit; item: Found | null }

/**
 * The edit that a line of readings comes to: they replace those that stand in it and keep their instrument; an emptied
 * line withdraws them. null: nothing is changed.
 * @param instrument with which new readings are taken, by its id; undefined: it is not said
 * @throws NotationError for a reading that can't be read
 */
export function lineEdit(
  text: string,
  dimension: Dimension,
  job: Job,
  { mint, instrument }: { mint: Mint; instrument: string | undefined },
): LineEdit | null {
  const before = readingsInLine(dimension, instrument)
  const wanted = text.trim()
  if (wanted === (before === undefined ? '' : lineOf(before, dimension))) return null
  const target = { dimension: dimension.name, id: before?.id ?? '' }
  if (wanted === '') return { edit: { do: 'withdraw-evidence', ...target, why: TAKEN_OUT }, item: null }
  const readings = splitReadings(wanted, dimension.kind, hasCommas(job))
  for (const reading of readings) readReading(reading, dimension.kind, job)
  if (before !== undefined) {
    return { edit: { do: 'change-evidence', ...target, set: { readings } }, item: { ...before, readings } }
  }
  const by = instrument === undefined ? {} : { instrument }
  const identity = newIdentity('found', dimension.evidence, mint)
  const item: Found = { ...identity, basis: 'found', readings, ...by }
  return { edit: { do: 'add-evidence', dimension: dimension.name, item }, item }
}

interface LineContext {
  /** That what was understood is shown in. */
  unit: Unit
  mint: Mint
  /** With which new readings are taken; undefined: it is not said. */
  instrument: string | undefined
}

/** What a line of readings comes to, tried on the job, and how it is understood; null: nothing is changed. */
export function draftedLine(
  text: string,
  dimension: Dimension,
  job: Job,
  { unit, mint, instrument }: LineContext,
): Drafted {
  return drafted(() => {
    const made = lineEdit(text, dimension, job, { mint, instrument })
    if (made === null) return null
    const { edit, item } = made
    applyEdit(job, readEdit(edit))
    if (item === null) return { edit, understood: 'Taken out: they no longer count', also: [] }
    const { understood, also = [], isWithout } = foundUnderstood(item, dimension, job, unit)
    return { edit, understood: isWithout ? understood : `${understood}${byWhat(job, item)}`, also }
  })
}

function byWhat(job: Job, { instrument }: Found): string {
  const known = job.instruments.find(({ id }) => id === instrument)
  return known === undefined ? '' : `, by ${known.name}`
}
