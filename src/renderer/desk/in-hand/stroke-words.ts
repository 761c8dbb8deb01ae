import type { FoundOn } from '../../../core/job/model/types.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import { foundMark, type Picks } from '../../picking/picks.ts'
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
  const feature = picks.features.at(-1)
  if (feature === undefined || !('pixels' in feature) || !feature.done) return ''
  const { stroke } = feature
  if (stroke === undefined) return feature.byHand === true ? 'Picked by hand.' : ''
  if (stroke.state === 'looking') return 'Looking for the stroke…'
  if (stroke.state === 'none') return `Picked by hand. ${inWords(stroke.because)}`
  const mark = foundMark(feature)
  if (mark?.stroke === undefined) return ''
  const found = `${foundInWords(mark.stroke)}: ${markUncertainty(mark)}.`
  return [found, outOfRoundInWords(mark.stroke.as, firstPlaces(mark))].join(' ').trim()
}
