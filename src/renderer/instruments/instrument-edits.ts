import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import type { Instrument, Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { refusalOf } from '../words/refusal.ts'
import { reason } from '../words/window-words.ts'

/** An instrument as it is being written. */
export interface InstrumentDraft {
  name: string
  /** Smallest step it shows. */
  resolution: string
  /** Maximum permissible error; empty: not known. */
  limit: string
  note: string
}

export const draftOf = ({ name, resolution, limit, note }: Instrument): InstrumentDraft => ({
  name,
  resolution,
  limit: limit ?? '',
  note: note ?? '',
})

/** What a draft comes to, and under which id; or what is wrong with it. */
export type DraftedInstrument = { edit: Edit; id: string } | { refused: AnyReason }

/**
 * Reads a draft as core will.
 * @param before the instrument that is changed; undefined: it is a new one
 */
export function draftedInstrument(
  job: Job,
  draft: InstrumentDraft,
  before: Instrument | undefined,
  mint: Mint,
): DraftedInstrument {
  const [name, resolution, limit, note] = [draft.name, draft.resolution, draft.limit, draft.note].map(
    (text) => text.trim(),
  ) as [string, string, string, string]
  if (name === '') return { refused: reason('instrument.no-name') }
  if (job.instruments.some((one) => one.id !== before?.id && one.name === name)) {
    return { refused: reason('instrument.name-taken', { name }) }
  }
  if (resolution === '') return { refused: reason('instrument.no-resolution') }
  const optional = { ...(limit === '' ? {} : { limit }), ...(note === '' ? {} : { note }) }
  const id = before?.id ?? mint('instrument')
  const clear = (['limit', 'note'] as const).filter(
    (field) => optional[field] === undefined && before?.[field] !== undefined,
  )
  const edit: Edit =
    before === undefined
      ? { do: 'add-instrument', item: { id, name, resolution, ...optional } }
      : {
          do: 'change-instrument',
          id,
          set: { name, resolution, ...optional },
          ...(clear.length === 0 ? {} : { clear }),
        }
  const refused = refusalOf(() => applyEdit(job, readEdit(edit)))
  return refused === null ? { edit, id } : { refused }
}

/** Readings that name an instrument. */
export interface UseOfInstrument {
  dimension: string
  /** What the dimension is. */
  label: string
  /** Of the evidence. */
  id: string
}

/** All readings that name an instrument, withdrawn ones too. */
export const usesOfInstrument = (job: Job, instrument: string): UseOfInstrument[] =>
  job.dimensions.flatMap(({ name, label, evidence }) =>
    evidence.flatMap((piece) =>
      piece.basis === 'found' && piece.instrument === instrument
        ? [{ dimension: name, label, id: piece.id }]
        : [],
    ),
  )

/** Takes an instrument away; readings that named it stay, and name none. */
export function removalOf(job: Job, { id, name }: Instrument): Edit {
  const uses = usesOfInstrument(job, id)
  const remove: Edit = { do: 'remove-instrument', id }
  if (uses.length === 0) return remove
  return {
    do: 'several',
    name: `remove instrument ${name}`,
    edits: [
      ...uses.map(
        (use): Edit => ({
          do: 'change-evidence',
          dimension: use.dimension,
          id: use.id,
          clear: ['instrument'],
        }),
      ),
      remove,
    ],
  }
}
