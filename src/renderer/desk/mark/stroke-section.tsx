import { useState } from 'react'
import type { Mark } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import type { Fitted } from '../../picking/fitted.ts'
import { HAND_SIGMA } from '../../picking/picks.ts'
import { stateOf } from '../../strokes/find-under-picks.ts'
import { searchAgain } from '../../strokes/search-for.ts'
import { searchScan } from '../../strokes/search-scan.ts'
import { fittedUncertainty, markUncertainty } from '../../strokes/uncertainty-words.ts'
import { outOfRoundInWords } from '../in-hand/out-of-round-words.ts'
import { foundInWords } from '../in-hand/stroke-words.ts'
import { byHandEdit, refoundEdit } from '../pick-edits.ts'
import { movedInWords } from './moved-words.ts'

/** Pixels: where it was looked for was within this of it. */
const REACH = 12

type Again = { state: 'looking' } | { state: 'found'; fitted: Fitted } | { state: 'none'; because: string }

/** What a mark was found from, and the ways to find it anew or to do without. */
export function StrokeSection({ mark, writable }: { mark: Mark; writable: boolean }) {
  const pictures = useBench((bench) => bench.pictures[mark.sheet])
  const [again, setAgain] = useState<Again | null>(null)
  const { stroke } = mark
  if (mark.how !== 'stroke' || stroke === undefined) return null
  const leftOut = stroke.leftOut?.length ?? 0
  const kept = mark.kind === 'point' ? 0 : mark.pixels.length
  const oval = mark.kind === 'circle' ? outOfRoundInWords(stroke.as, mark.pixels) : ''
  const find = async () => {
    if (pictures === undefined) return
    setAgain({ state: 'looking' })
    const result = await searchScan(searchAgain(stroke, stroke.rough, REACH), pictures)
    setAgain(stateOf(result, { pixels: stroke.rough, sigmas: [HAND_SIGMA] }))
  }
  const byHand = byHandEdit(mark)
  return (
    <Section title="The stroke it is on">
      <p>{foundInWords(stroke)}.</p>
      {oval !== '' && <p className="block-soft">{oval}</p>}
      {(kept > 0 || leftOut > 0) && (
        <p className="block-soft">
          {kept > 0 && `${kept} profiles kept (ticks). `}
          {leftOut > 0 && `${leftOut} left out (open crosses): they do not lie on it.`}
        </p>
      )}
      {again?.state === 'looking' && <p aria-live="polite">Looking for the stroke…</p>}
      {again?.state === 'none' && <p aria-live="polite">{again.because}</p>}
      {again?.state === 'found' && (
        <div className="block-words" aria-live="polite">
          <dl className="block-facts">
            <dt>Now</dt>
            <dd>{markUncertainty(mark)}</dd>
            <dt>Found again</dt>
            <dd>{fittedUncertainty(again.fitted)}</dd>
            <dt>Moved by</dt>
            <dd>{movedInWords(mark, again.fitted)}</dd>
          </dl>
          {(mark.repeats?.length ?? 0) > 0 && (
            <p className="block-soft">
              Taking it drops what was picked again: that belongs to what was found before.
            </p>
          )}
          <div className="block-row">
            <Button
              kind="main"
              disabled={!writable}
              onPress={() => {
                void makeEdit(refoundEdit(mark, again.fitted)).then((kept) => {
                  if (kept) setAgain(null)
                })
              }}
            >
              Take what was found again
            </Button>
            <Button onPress={() => setAgain(null)}>Leave it</Button>
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
          disabled={!writable || byHand === null}
          hint="Back to where the hand pointed, to about a pixel."
          onPress={() => {
            if (byHand !== null) void makeEdit(byHand)
          }}
        >
          Pick by hand instead
        </Button>
      </div>
    </Section>
  )
}
