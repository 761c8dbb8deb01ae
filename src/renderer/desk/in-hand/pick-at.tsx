import './pick-at.css'
import { useEffect, useState } from 'react'
import { type Pixel, pixel } from '../../../core/geometry/frames.ts'
import { HAND_SIGMA } from '../../../core/job/from-picks/mark-by-hand.ts'
import { useBench } from '../../bench/bench-store.ts'
import { setPicks } from '../../bench/choose.ts'
import { pickProgress, pickSentence } from '../../guide/pick-sentences.ts'
import { Button } from '../../parts/button.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { canEnd, ended, lastPixel, nudged, wanted, withoutLast, withPick } from '../../picking/picks.ts'
import { HowToPick } from './how-to-pick.tsx'
import { searchInWords } from './stroke-words.ts'

const near = (value: number): number => Math.round(value * 10) / 10

/** How far the picks are, and a way to place one by its coordinates. */
export function PickAt() {
  const picks = useBench((bench) => bench.picks)
  const last = lastPixel(picks)
  const [x, setX] = useState(Number.NaN)
  const [y, setY] = useState(Number.NaN)
  const [lacking, setLacking] = useState(false)
  const [lastX, lastY] = last ?? [Number.NaN, Number.NaN]
  useEffect(() => {
    setX(near(lastX))
    setY(near(lastY))
  }, [lastX, lastY])
  const given: Pixel | null = Number.isFinite(x) && Number.isFinite(y) ? pixel(x, y) : null
  const { settled, of } = pickProgress(picks)
  const marks = of === 1 ? 'mark' : 'marks'
  return (
    <div className="block-words">
      <p className="block-soft">
        {pickSentence(picks)} {settled} of {of} {marks} picked.
      </p>
      <p className="block-soft pick-at-found" aria-live="polite">
        {searchInWords(picks)}
      </p>
      <HowToPick />
      <div className="pick-at">
        <NumberField label="x" suffix="px" value={x} onChange={setX} step={0.1} places={1} />
        <NumberField label="y" suffix="px" value={y} onChange={setY} step={0.1} places={1} />
        {lacking && given === null && <p className="pick-at-lacking">Write both x and y first.</p>}
        <div className="pick-at-foot">
          <Button
            disabled={wanted(picks) === null}
            onPress={() => {
              setLacking(given === null)
              if (given !== null) setPicks(withPick(picks, given, HAND_SIGMA, true))
            }}
          >
            Pick here
          </Button>
          <Button
            disabled={last === null}
            onPress={() => {
              setLacking(given === null)
              if (given !== null && last !== null) {
                setPicks(nudged(picks, given[0] - last[0], given[1] - last[1]))
              }
            }}
          >
            Move the last pick here
          </Button>
          <Button disabled={picks.features.length === 0} onPress={() => setPicks(withoutLast(picks))}>
            Take the last pick back
          </Button>
          {canEnd(picks) && <Button onPress={() => setPicks(ended(picks))}>End it here</Button>}
        </div>
      </div>
    </div>
  )
}
