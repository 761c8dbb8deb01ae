import { type CoreReason, reason } from '../../words/core-words.ts'
import { nameItemIn } from '../../words/name-in.ts'
import type { Labelled } from '../ids/label.ts'
import type { Edit } from '../model/edit-schema.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'

/** A piece of evidence as far as it matters here. */
interface Piece extends Labelled {
  withdrawn?: string | undefined
}

/** The evidence of a job while the parts of an edit are gone through, without what they do to anything else. */
class PiecesOf {
  readonly #job: Job
  readonly #touched = new Map<string, Piece>()
  readonly #renamed = new Map<string, string>()

  constructor(job: Job) {
    this.#job = job
  }

  get(dimension: string, id: string): Piece | undefined {
    const touched = this.#touched.get(this.#key(dimension, id))
    if (touched !== undefined) return touched
    const name = this.#renamed.get(dimension) ?? dimension
    return this.#job.dimensions.find((one) => one.name === name)?.evidence.find((one) => one.id === id)
  }

  put(dimension: string, piece: Piece): void {
    this.#touched.set(this.#key(dimension, piece.id), piece)
  }

  rename(name: string, to: string): void {
    this.#renamed.set(to, this.#renamed.get(name) ?? name)
  }

  #key = (dimension: string, id: string): string =>
    JSON.stringify([this.#renamed.get(dimension) ?? dimension, id])
}

const refuse = (problem: CoreReason, piece: Piece): never => {
  throw new JobError(nameItemIn(problem, piece))
}

function review(pieces: PiecesOf, edit: Edit): void {
  switch (edit.do) {
    case 'several':
      for (const one of edit.edits) review(pieces, one)
      return
    case 'rename-dimension':
      pieces.rename(edit.name, edit.to)
      return
    case 'add-dimension':
      for (const one of edit.item.evidence) pieces.put(edit.item.name, one)
      return
    case 'add-evidence':
      pieces.put(edit.dimension, edit.item)
      return
    case 'reinstate-evidence':
    case 'withdraw-evidence': {
      const { dimension, id } = edit
      const piece = pieces.get(dimension, id)
      if (piece === undefined) return
      const why = piece.withdrawn
      if (edit.do === 'withdraw-evidence' && why !== undefined)
        refuse(reason('edit.withdrawn-already', { id, dimension, why }), piece)
      pieces.put(dimension, { ...piece, withdrawn: edit.do === 'withdraw-evidence' ? edit.why : undefined })
      return
    }
    case 'adopt': {
      const { dimension, adopt: id } = edit
      const piece = id === undefined ? undefined : pieces.get(dimension, id)
      const why = piece?.withdrawn
      if (piece !== undefined && id !== undefined && why !== undefined)
        refuse(reason('edit.adopts-withdrawn', { id, dimension, why }), piece)
    }
  }
}

/**
 * Refuses to adopt what is withdrawn, and to withdraw it again. Only what a person does now: histories may hold such
 * edits, and taking something back may come to the same.
 *
 * @param job the job before the edit
 * @throws JobError that says why it was withdrawn
 */
export const reviewWithdrawn = (job: Job, edit: Edit): void => review(new PiecesOf(job), edit)
