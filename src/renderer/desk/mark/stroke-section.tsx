import { useState } from 'react'
import { HAND_SIGMA } from '../../../core/job/from-picks/mark-by-hand.ts'
import { putBackByHand, takeFoundAnew } from '../../../core/job/from-picks/pick-mark-again.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { firstPlaces, picksOf } from '../../../core/job/picks/picks-of.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeOf } from '../../bench/edits.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import type { StrokeState } from '../../picking/stroke-state.ts'
import { stateOf } from '../../strokes/find-under-picks.ts'
import { searchScan } from '../../strokes/search-scan.ts'
import { wishAgain } from '../../strokes/search-wish.ts'
import { markUncertainty } from '../../strokes/uncertainty-words.ts'
import { inWords } from '../../words/window-words.ts'
import { outOfRoundInWords } from '../in-hand/out-of-round-words.ts'
import { foundInWords } from '../in-hand/stroke-words.ts'
import { movedInWords } from './moved-words.ts'

/** Pixels: where it was looked for was within this of it. */
const REACH = 12

/** What a mark was found from, and the ways to find it anew or to do without. */
export function StrokeSection({ mark, writable }: { mark: Mark; writable: boolean }) {
  const pictures = useBench((bench) => bench.pictures[mark.sheet])
  const [again, setAgain] = useState<StrokeState | null>(null)
  const { stroke } = mark
  if (mark.how !== 'stroke' || stroke === undefined) return null
  const leftOut = stroke.leftOut?.length ?? 0
  const kept = mark.kind === 'point' ? 0 : firstPlaces(mark).length
  const oval = mark.kind === 'circle' ? outOfRoundInWords(stroke.as, firstPlaces(mark)) : ''
  const find = async () => {
    if (pictures === undefined) return
    setAgain({ state: 'looking' })
    const { found } = await searchScan(stroke.rough, wishAgain(stroke, REACH), pictures)
    setAgain(stateOf(found, stroke.rough, [HAND_SIGMA]))
  }
  const byHand = putBackByHand(mark)
  return (
    <Section title="The stroke it is on">
      <p>{foundInWords(stroke)}.</p>
      {oval !== '' && <p className="block-soft">{oval}</p>}
      {(kept > 0 || leftOut > 0) && (
        <p className="block-soft">
          {kept > 0 && `${kept} profiles kept (ticks). `}
          {leftOut > 0 && `${leftOut} set aside (open crosses): they do not lie on it.`}
        </p>
      )}
      {again?.state === 'looking' && <p aria-live="polite">Looking for the stroke…</p>}
      {again?.state === 'none' && <p aria-live="polite">{inWords(again.because)}</p>}
      {again?.state === 'found' && (
        <div className="block-words" aria-live="polite">
          <dl className="block-facts">
            <dt>Now</dt>
            <dd>{markUncertainty(mark)}</dd>
            <dt>Found again</dt>
            <dd>{markUncertainty(again.mark)}</dd>
            <dt>Moved by</dt>
            <dd>{movedInWords(mark, again.mark)}</dd>
          </dl>
          {picksOf(mark).length > 1 && (
            <p className="block-soft">
              Taking it drops what was picked again: that belongs to what was found before.
            </p>
          )}
          <div className="block-row">
            <Button
              kind="main"
              disabled={!writable}
              onPress={() => {
                void makeOf(takeFoundAnew(mark, again.mark)).then((kept) => {
                  if (kept) setAgain(null)
                })
              }}
            >
              Take what was found again
            </Button>
            <Button onPress={() => setAgain(null)}>Cancel</Button>
          </div>
        </div>
      )}
      <div className="block-row">
        <Button
          disabled={!writable || pictures === undefined || again?.state === 'looking'}
          onPress={() => void find()}
        >
          Find again
        </Button>
        <Button
          disabled={!writable || 'refused' in byHand}
          hint="Back to where the hand pointed, to about a pixel."
          onPress={() => {
            void makeOf(byHand)
          }}
        >
          Pick by hand instead
        </Button>
      </div>
    </Section>
  )
}
