import { ADOPTION_ORDER } from '../model/adoption-order.ts'
import type { Job } from '../model/types.ts'
import type { AdoptedFrom, Change } from './change.ts'
import type { Fields } from './changed-fields.ts'

/** Pieces of evidence by their ids. */
type Pieces = Map<string, Fields>

const keyOf = (dimension: string, id: string): string => `${dimension} ${id}`

/** The rules pass over what was withdrawn and what is hard to read. */
const counts = ({ withdrawn, legibility }: Fields): boolean =>
  withdrawn === undefined && legibility !== 'doubtful'

/** Fields with some of them as they were before a change. */
function before(fields: Fields, { fields: changed }: Change): Fields {
  const back: Record<string, unknown> = { ...fields }
  for (const one of changed) {
    if (one.before === undefined) delete back[one.field]
    else back[one.field] = one.before
  }
  return back
}

/** The evidence of a job's dimensions as it stood before a line of its history, while that is read from the newest back. */
export class KnownEvidence {
  readonly #dimensions: Map<string, Pieces>
  /** What was said last by what is not there yet at the line that was read. */
  readonly #later = new Map<string, Fields>()

  constructor({ dimensions }: Pick<Job, 'dimensions'>) {
    this.#dimensions = new Map(
      dimensions.map(({ name, evidence }) => [
        name,
        new Map(evidence.map((one) => [one.id, one as unknown as Fields])),
      ]),
    )
  }

  /** Goes back before what a line did, all of it. */
  goBack(changes: readonly Change[]): void {
    for (const change of changes.toReversed()) this.#before(change)
  }

  /** What is known of an adoption that the line made which was gone back before last. */
  adopting({ thing, fields }: Change): AdoptedFrom {
    const pieces = this.#dimensions.get(thing.id)
    const adopt = String(fields.find(({ field }) => field === 'adopt')?.after)
    const adopted = pieces?.get(adopt) ?? this.#later.get(keyOf(thing.id, adopt))
    return {
      ...(adopted === undefined ? {} : { adopted }),
      ...(pieces === undefined ? {} : { first: firstOf(pieces) }),
    }
  }

  #before(change: Change): void {
    const { thing, verb, fields } = change
    if (thing.kind === 'dimension' && verb === 'renamed') {
      const name = fields.find(({ field }) => field === 'name')?.before
      const pieces = this.#dimensions.get(thing.id)
      this.#dimensions.delete(thing.id)
      if (typeof name === 'string' && pieces !== undefined) this.#dimensions.set(name, pieces)
    }
    if (thing.kind !== 'evidence' || thing.of === undefined) return
    const pieces = this.#dimensions.get(thing.of) ?? new Map<string, Fields>()
    this.#dimensions.set(thing.of, pieces)
    const piece = pieces.get(thing.id)
    if (verb !== 'added') pieces.set(thing.id, before(piece ?? { id: thing.id }, change))
    else {
      pieces.delete(thing.id)
      if (piece !== undefined) this.#later.set(keyOf(thing.of, thing.id), piece)
    }
  }
}

/** The pieces that stand on the basis which the rules try before all others, of those that count by them. */
function firstOf(pieces: Pieces): { id: string; fields: Fields }[] {
  const counting = [...pieces].filter(([, piece]) => counts(piece))
  for (const basis of ADOPTION_ORDER) {
    const found = counting.filter(([, piece]) => piece['basis'] === basis)
    if (found.length > 0) return found.map(([id, fields]) => ({ id, fields }))
  }
  return []
}
