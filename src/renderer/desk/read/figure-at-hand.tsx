import './figure-at-hand.css'
import type { Job } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import type { FigureAtHand } from '../../bench/figure-at-hand.ts'
import { readFigure } from '../../bench/readings.ts'
import { Button } from '../../parts/button.tsx'
import { abandonTool, pickAnew, showKept } from '../keeping/after-picking.ts'
import { FigureForm } from './figure-form.tsx'
import { FigureCrop, ReadAs } from './read-figure.tsx'

/** Degrees by which the lettering is turned at each press. */
const TURN = 15

/** The figure in the box that was drawn: enlarged and upright, as it is read, and what it is taken for. */
export function FigureAtHandView({ job, figure }: { job: Job; figure: FigureAtHand }) {
  const picks = useBench((bench) => bench.picks)
  const of = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const { sheet, box, state } = figure
  const drawn = [box.x, box.y, box.width, box.height] as const
  const reading = state.is === 'read' ? state.reading : null
  const angle = figure.angle ?? reading?.angle ?? 0
  const turn = (by: number) => void readFigure(sheet, box, withinHalf(angle + by))
  return (
    <section className="figure-at-hand" aria-label="Figure in the box">
      <FigureCrop sheet={sheet} box={drawn} angle={angle} />
      <div className="figure-at-hand-turn">
        <span className="block-soft">
          {angle === 0 ? 'Read level' : `Read turned by ${Math.round(angle)}°`}
        </span>
        <Button
          kind="quiet"
          icon="turn-left"
          label="Read it turned to the left"
          onPress={() => turn(-TURN)}
        />
        <Button
          kind="quiet"
          icon="turn-right"
          label="Read it turned to the right"
          onPress={() => turn(TURN)}
        />
        <Button kind="quiet" label="Read it turned by a quarter" onPress={() => turn(90)}>
          Quarter
        </Button>
      </div>
      {state.is === 'being read' && (
        <p className="block-soft" role="status">
          Reading the figure…
        </p>
      )}
      {state.is === 'not read' && (
        <>
          <p className="figure-at-hand-not" role="alert">
            {state.sentence}
          </p>
          <div className="block-row">
            <Button kind="main" onPress={() => pickAnew(picks)}>
              Draw another box
            </Button>
            <Button onPress={abandonTool}>Cancel</Button>
          </div>
        </>
      )}
      {reading !== null && (
        <>
          <ReadAs reading={reading} />
          <FigureForm
            key={JSON.stringify([drawn, figure.angle])}
            job={job}
            sheet={sheet}
            reading={reading}
            of={of}
            // Whoever turns it goes on turning it.
            takesKeyboard={figure.angle === null}
            onKept={(name) => showKept(picks, { kind: 'dimension', name })}
            onAbandon={() => pickAnew(picks)}
          />
        </>
      )}
    </section>
  )
}

/** The same direction, between half a turn to the left and to the right, degrees. */
const withinHalf = (angle: number): number => {
  const turned = ((angle % 360) + 360) % 360
  return turned > 180 ? turned - 360 : turned
}
