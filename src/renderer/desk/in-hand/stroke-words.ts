import type { FoundOn } from '../../../core/job/model/types.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import { partName } from '../../picking/pick-names.ts'
import { foundMark, type NewFeature, type Picks } from '../../picking/picks.ts'
import { roundWords } from '../../picking/round-words.ts'
import { AS_IT_LIES, readingWords, way } from '../../strokes/edge-sides.ts'
import { markUncertainty, pixelsInWords } from '../../strokes/uncertainty-words.ts'
import { inWords } from '../../words/window-words.ts'
import { outOfRoundInWords } from './out-of-round-words.ts'

const AS: Readonly<Record<FoundOn['as'], string>> = {
  point: 'a stroke',
  crossing: 'a crossing of strokes',
  line: 'a straight stroke',
  circle: 'a round stroke',
  arc: 'an arc',
}

/** Which part of which stroke a mark is, in words: `Lower edge of a straight stroke, 4.1 px wide`. */
export function foundInWords({ as, reading, rough, width }: FoundOn): string {
  const [[ax, ay] = [0, 0], [bx, by] = [1, 0]] = rough
  const part =
    as === 'circle' || as === 'arc'
      ? roundWords(reading)
      : as === 'line'
        ? readingWords(reading, way(bx - ax, by - ay), AS_IT_LIES)
        : reading === 'centre'
          ? 'centre'
          : 'edge'
  const wide = width === undefined ? '' : `, ${pixelsInWords(width)} wide`
  return `${part.charAt(0).toUpperCase()}${part.slice(1)} of ${AS[as]}${wide}`
}

/** What became of the search under the newest picks, a sentence; empty while there is nothing to say. */
export function searchInWords(picks: Picks): string {
  const feature = newestDone(picks)
  if (feature === null) return ''
  const { stroke } = feature
  if (stroke === undefined) return feature.byHand === true ? 'Picked by hand.' : ''
  if (stroke.state === 'looking') return 'Looking for the stroke…'
  if (stroke.state === 'none') return `${byHand(picks)} ${inWords(stroke.because)}`
  const mark = foundMark(feature)
  return mark?.stroke === undefined ? '' : `${foundInWords(mark.stroke)}.`
}

/** That the newest mark was picked by hand; which it is, where there are several. */
const byHand = ({ tool, features }: Picks): string =>
  features.length > 1 ? `${partName(tool, features.length - 1)}: by hand.` : 'Picked by hand.'

/** Of which of the picks before the newest no stroke was found though one was looked for, a sentence; else empty. */
export function missedInWords(picks: Picks): string {
  const missed = picks.features
    .slice(0, -1)
    .flatMap((feature, part) =>
      'pixels' in feature && feature.stroke?.state === 'none' ? [partName(picks.tool, part)] : [],
    )
  if (missed.length === 0) return ''
  const what = `${missed[0]}${missed
    .slice(1)
    .map((name) => `, ${name.toLowerCase()}`)
    .join('')}`
  return `${what}: by hand, for no stroke was found there. Take the picks back with Esc to pick closer.`
}

/** How surely the stroke under the newest picks was found, and whether it is round; empty where none was. */
export function sureInWords(picks: Picks): string {
  const feature = newestDone(picks)
  const mark = feature === null ? null : foundMark(feature)
  if (mark?.stroke === undefined) return ''
  const { as } = mark.stroke
  return [`${markUncertainty(mark)}.`, outOfRoundInWords(as, firstPlaces(mark))].join(' ').trim()
}

/** Whether no stroke was found under the newest picks though one was looked for. */
export const isNotFound = (picks: Picks): boolean => newestDone(picks)?.stroke?.state === 'none'

function newestDone({ features }: Picks): NewFeature | null {
  const feature = features.at(-1)
  return feature !== undefined && 'pixels' in feature && feature.done ? feature : null
}
