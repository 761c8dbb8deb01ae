import { type CoreReason, reason } from '../words/core-words.ts'
import type { Alternative } from './explanations.ts'
import type { ReferenceCheck } from './reference-checks.ts'

/**
 * What a person should know of references that do not fit; null when there is nothing to say.
 * @param alternatives what may be wrong where nothing decides
 * @param enlarged factor by which uncertainties were enlarged, 1 when they were not
 * @param p probability of the misfit of those used; null when nothing is redundant, and then nothing is enlarged
 */
export function misfit(
  references: readonly ReferenceCheck[],
  alternatives: readonly Pick<Alternative, 'leftOut'>[],
  enlarged: number,
  p: number | null,
): CoreReason | null {
  const misfits = enlarged > 1 && p !== null ? { enlarged, p } : null
  const suspects = references.filter((r) => r.suspect).map(suspectOf)
  const either = alternatives.map(({ leftOut }) => leftOut.map((id) => ({ id })))
  const setAside = references.find((r) => r.setAside)
  if (setAside !== undefined) {
    const reference = suspectOf(setAside)
    return misfits === null
      ? reason('misfit.set-aside', { reference, either })
      : reason('misfit.set-aside-and-enlarged', { reference, either, ...misfits })
  }
  if (misfits !== null) return reason('misfit.enlarged', { suspects, either, ...misfits })
  return suspects.length === 0 ? null : reason('misfit.suspects', { suspects })
}

const suspectOf = ({ id, part }: ReferenceCheck): { id: string; part?: string } =>
  part === undefined ? { id } : { id, part }
