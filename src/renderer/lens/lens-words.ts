import { markOnStroke } from '../../core/job/from-picks/mark-on-stroke.ts'
import type { HowToPick } from '../picking/how-to-pick.ts'
import type { PickQuality } from '../picking/pick-quality.ts'
import { AS_IT_LIES, readingWords, type SeenFrom, way } from '../strokes/edge-sides.ts'
import { acrossStroke, pixelsInWords } from '../strokes/uncertainty-words.ts'
import type { UnderPointer } from '../strokes/under-pointer.ts'
import { inWords, reason } from '../words/window-words.ts'

/** What the lens says of the pick that would be made. */
interface LensWords {
  /** How, and how sure. */
  sure: string
  /** What stands out of it, or what to do. */
  note: string
}

interface LensSetting {
  /** How the sheet is held. */
  from?: SeenFrom
  old?: OldMark | null
  /** The edge that is read in place of the middle, in words; null where the middle is. */
  edge?: string | null
}

/** The old mark that lies under the pointer. */
export interface OldMark {
  /** With what rests on it; null where none lies there. */
  called: string | null
  /** Whether the key is held by which it is taken. */
  taken: boolean
}

/** To about 95 %, as all that the window gives. */
const EXPANDED = 1.96

const BACK_TO_INK = 'I goes back to the ink of the sheet'

/**
 * @param quality of a pick by hand here
 * @param coarse what is to be said of the picture where it is not the scan as it is; empty where it is
 */
export function lensWords(
  underPointer: UnderPointer,
  quality: PickQuality,
  coarse: string,
  how: HowToPick,
  { from = AS_IT_LIES, old = null, edge = null }: LensSetting = {},
): LensWords {
  if (old?.taken === true) {
    return old.called === null
      ? { sure: 'no old mark here', note: 'Shift takes a mark that is there already.' }
      : { sure: old.called, note: 'A click takes this mark as it is.' }
  }
  const plain = newMarkWords(underPointer, quality, coarse, how, from)
  const words = edge === null || how.byHand ? plain : { ...plain, sure: `${edge} · ${plain.sure}` }
  const called = old?.called ?? null
  return called === null || underPointer.state === 'complete'
    ? words
    : { ...words, note: `New mark. Shift takes the one that lies here: ${called}.` }
}

function newMarkWords(
  underPointer: UnderPointer,
  quality: PickQuality,
  coarse: string,
  how: HowToPick,
  from: SeenFrom,
): LensWords {
  const hand = `by hand, ± ${(EXPANDED * quality.sigma).toFixed(1)} px`
  switch (underPointer.state) {
    case 'hand':
      return { sure: hand, note: coarse !== '' ? coarse : how.byHand ? 'H goes back to strokes' : '' }
    case 'complete':
      return { sure: '', note: 'All is picked. The arrow keys move the last pick, by hand.' }
    case 'far':
      return { sure: hand, note: coarse !== '' ? coarse : inWords(reason('search.too-far-off')) }
    case 'looking':
      return { sure: hand, note: coarse !== '' ? coarse : 'Looking for the stroke…' }
    case 'none':
      return {
        sure: hand,
        note:
          how.otherInk && underPointer.because.code !== 'search.other-ink'
            ? `${inWords(underPointer.because)} ${BACK_TO_INK}.`
            : inWords(underPointer.because),
      }
    case 'found': {
      const { found, at } = underPointer
      const across = acrossStroke(markOnStroke(found, [at], quality.sigma))
      const width = `width ${pixelsInWords(found.shape.width)}`
      if (found.kind === 'crossing') {
        return {
          sure: `crossing, ± ${pixelsInWords(EXPANDED * across)}`,
          note: `${width} · ${how.otherInk ? BACK_TO_INK : 'X takes one stroke'} · Alt by hand`,
        }
      }
      const part =
        found.kind === 'point'
          ? readingWords(found.reading, way(Math.cos(found.direction), Math.sin(found.direction)), from)
          : 'stroke'
      return {
        sure: `${part}, ± ${pixelsInWords(EXPANDED * across)} across`,
        note: `${width} · ${how.otherInk ? BACK_TO_INK : 'E takes another edge'} · Alt by hand`,
      }
    }
  }
}
