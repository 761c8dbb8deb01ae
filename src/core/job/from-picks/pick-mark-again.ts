import { reason } from '../../words/core-words.ts'
import { nameItemIn } from '../../words/name-in.ts'
import type { Edit } from '../edits/edit.ts'
import { called } from '../ids/label.ts'
import type { Mark } from '../model/types.ts'
import { firstPlaces } from '../picks/picks-of.ts'
import { HAND_SIGMA } from './mark-by-hand.ts'
import type { PicksRefused, UnnamedMark } from './picked-mark.ts'

type Again = { edit: Edit } | PicksRefused

/** Adds one more independent pick to a mark, as it was picked before: on its stroke, or by hand. */
export function pickAgain(mark: Mark, again: UnnamedMark): Again {
  if (mark.stroke !== undefined && mark.how === 'stroke' && again.how !== 'stroke') {
    return { refused: nameItemIn(reason('picks.not-on-its-stroke', { mark: mark.id }), mark) }
  }
  if (again.kind !== mark.kind) return ofAnotherKind(mark, again)
  const [place] = firstPlaces(again)
  const { how, sigma } = again
  const where = again.kind === 'point' ? { pixel: place } : { pixels: [...firstPlaces(again)] }
  return { edit: { do: 'repeat-pick', mark: mark.id, ...where, how, sigma } }
}

/** A mark as it was found anew on its stroke. What was picked again belongs to what was found before, so it goes. */
export function takeFoundAnew(mark: Mark, found: UnnamedMark): Again {
  if (found.kind !== mark.kind || found.stroke === undefined) return ofAnotherKind(mark, found)
  const { sigma, stroke } = found
  const covariance = found.kind === 'point' ? found.covariance : undefined
  const set = {
    how: 'stroke' as const,
    ...(found.kind === 'point' ? { pixel: found.pixel } : { pixels: found.pixels }),
    sigma,
    stroke,
    ...(covariance === undefined ? {} : { covariance }),
  }
  const gone = covariance === undefined ? ['repeats', 'repeatedBy', 'covariance'] : ['repeats', 'repeatedBy']
  return {
    edit: {
      do: 'several',
      name: `find ${called('mark', mark)} again`,
      edits: [{ do: 'change-mark', id: mark.id, set, clear: gone.filter((field) => field in mark) }],
    },
  }
}

/** A mark put back to where the hand pointed, as good as a hand is. */
export function putBackByHand(mark: Mark): Again {
  const rough = mark.stroke?.rough ?? []
  const [pixel] = rough
  if (pixel === undefined)
    return { refused: nameItemIn(reason('picks.never-pointed-at', { mark: mark.id }), mark) }
  const set = {
    how: 'hand' as const,
    sigma: HAND_SIGMA,
    ...(mark.kind === 'point' ? { pixel } : { pixels: rough }),
  }
  const clear = ['stroke', 'covariance', 'repeats', 'repeatedBy'].filter((field) => field in mark)
  return {
    edit: {
      do: 'several',
      name: `pick ${called('mark', mark)} by hand`,
      edits: [{ do: 'change-mark', id: mark.id, set, clear }],
    },
  }
}

const ofAnotherKind = (mark: Mark, given: UnnamedMark): PicksRefused => ({
  refused: nameItemIn(
    reason('picks.another-kind', { mark: mark.id, kind: mark.kind, given: given.kind }),
    mark,
  ),
})
