import type { Pixel } from '../../../core/geometry/frames.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { setPicks } from '../../bench/choose.ts'
import { type Leg, legsOf } from '../../overlay/legs.ts'
import { pickedShapes } from '../../overlay/picked-shapes.ts'
import { Button } from '../../parts/button.tsx'
import type { MeasurePicks } from '../../picking/picked-marks.ts'
import type { NewFeature } from '../../picking/picks.ts'
import { findUnderPicks } from '../../strokes/find-under-picks.ts'
import { Caution } from '../keeping/caution.tsx'

interface WhichAngleProps {
  picks: MeasurePicks
  marks: readonly Mark[]
}

/** Which of the two angles between two lines was picked, and a way to the other. */
export function WhichAngle({ picks, marks }: WhichAngleProps) {
  const lines = linesOf(picks, marks)
  if (picks.tool.measure !== 'angle' || lines === null) return null
  const legs = legsOf(...lines)
  if (legs === null) return null
  const [u, v] = legs.ways
  const picked = (Math.acos(Math.min(1, Math.max(-1, u[0] * v[0] + u[1] * v[1]))) * 180) / Math.PI
  const other = (
    <div className="block-row">
      <Button onPress={() => turnLast(picks, lines[1])}>
        {`Take the other angle, about ${Math.round(180 - picked)}°`}
      </Button>
    </div>
  )
  if (legs.enclosed !== false) return other
  return (
    <Caution>
      <p>
        The two lines as they are drawn enclose the other angle: one of them was picked towards where they
        meet. The arc on the sheet shows which is measured.
      </p>
      {other}
    </Caution>
  )
}

/** The two lines as they were picked; null before both are. */
function linesOf(picks: MeasurePicks, marks: readonly Mark[]): [Leg<Pixel>, Leg<Pixel>] | null {
  const [first, second] = pickedShapes(picks, marks).map(({ pixels: [from, to] }): Leg<Pixel> | null =>
    from === undefined || to === undefined ? null : [from, to],
  )
  return first == null || second == null ? null : [first, second]
}

/** Picks the second line the other way round; an old one is picked anew for that, since others rest on it as it is. */
function turnLast(picks: MeasurePicks, [from, to]: Leg<Pixel>): void {
  const last = picks.features.at(-1)
  if (last === undefined) return
  const before: Partial<NewFeature> = 'pixels' in last ? last : {}
  const turned: NewFeature = {
    need: 'line',
    pixels: [to, from],
    sigmas: before.sigmas ?? [1, 1],
    done: true,
    ...(before.byHand === true ? { byHand: true } : {}),
  }
  setPicks({ ...picks, features: [...picks.features.slice(0, -1), turned] })
  void findUnderPicks()
}
