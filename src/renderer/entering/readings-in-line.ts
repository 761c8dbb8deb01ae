import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import { newIdentity } from '../../core/job/ids/new-identity.ts'
import type { Dimension, Evidence, Job, Unit } from '../../core/job/model/types.ts'
import { foundUnderstood } from './found-understood.ts'
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

const COMMA = /\d,\d{1,2}(?!\d)/
const COMMAS = new WeakMap<Job, boolean>()

/** Whether any figure or reading of a job has a decimal comma. */
export function hasCommas(job: Job): boolean {
  const known = COMMAS.get(job)
  if (known !== undefined) return known
  const has = job.dimensions.some(({ evidence }) =>
    evidence.some((piece) =>
      piece.basis === 'printed'
        ? COMMA.test(piece.text)
        : piece.basis === 'found' && piece.readings.some((one) => COMMA.test(one)),
    ),
  )
  COMMAS.set(job, has)
  return has
}

interface LineContext {
  /** That what was understood is shown in. */
  unit: Unit
  mint: Mint
  /** With which new readings are taken; undefined: it is not said. */
  instrument: string | undefined
}

/**
 * What a line of readings comes to: they replace those that stand in it and keep their instrument; an emptied line
 * withdraws them. null: nothing is changed.
 */
export function draftedLine(
  text: string,
  dimension: Dimension,
  job: Job,
  { unit, mint, instrument }: LineContext,
): Drafted {
  const before = readingsInLine(dimension, instrument)
  const wanted = text.trim()
  if (wanted === (before === undefined ? '' : lineOf(before, dimension))) return null
  const target = { dimension: dimension.name, id: before?.id ?? '' }
  if (wanted === '') {
    const edit: Edit = { do: 'withdraw-evidence', ...target, why: TAKEN_OUT }
    return drafted(() => ({
      edit: tried(job, edit),
      understood: 'Taken out: they no longer count',
      also: [],
    }))
  }
  const readings = splitReadings(wanted, dimension.kind, hasCommas(job))
  const item: Found =
    before === undefined
      ? {
          ...newIdentity('found', dimension.evidence, mint),
          basis: 'found',
          readings,
          ...(instrument === undefined ? {} : { instrument }),
        }
      : { ...before, readings }
  const edit: Edit =
    before === undefined
      ? { do: 'add-evidence', dimension: dimension.name, item }
      : { do: 'change-evidence', ...target, set: { readings } }
  return drafted(() => {
    const { understood, also = [] } = foundUnderstood(item, dimension, job, unit)
    return { edit: tried(job, edit), understood: `${understood}${byWhat(job, item)}`, also }
  })
}

function tried(job: Job, edit: Edit): Edit {
  applyEdit(job, readEdit(edit))
  return edit
}

function byWhat(job: Job, { instrument }: Found): string {
  const known = job.instruments.find(({ id }) => id === instrument)
  return known === undefined ? '' : `, by ${known.name}`
}
