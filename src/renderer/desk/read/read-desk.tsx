import { useEffect } from 'react'
import { outlineBetween } from '../../../core/job/from-picks/add-view.ts'
import { useBench } from '../../bench/bench-store.ts'
import { getReadings, putAwayFigure, readFigure } from '../../bench/readings.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { pickedCorners } from '../../picking/picked-marks.ts'
import { isComplete } from '../../picking/picks.ts'
import { FIGURE_KEY, takeUpToWork } from '../in-hand/tool-keys.ts'
import { FigureAtHandView } from './figure-at-hand.tsx'
import { HandOfSheet } from './hand-of-sheet.tsx'
import { WholeSheet } from './whole-sheet.tsx'

/** Station 4: printed figures, one by one or all of a sheet. */
export function ReadDesk() {
  const job = useBench((bench) => bench.opened?.job)
  const sheet = useBench((bench) => bench.sheet)
  const figure = useBench((bench) => bench.figure)
  useBoxRead()
  if (job === undefined || sheet === null) return null
  if (figure !== null) return <FigureAtHandView job={job} figure={figure} />
  return (
    <WholeSheet job={job} sheet={sheet} key={sheet}>
      <OneFigure />
      <HandOfSheet sheet={sheet} />
    </WholeSheet>
  )
}

/** Reads the figure in the box as soon as that is drawn, and puts it away with the box. */
function useBoxRead(): void {
  const picks = useBench((bench) => bench.picks)
  const sheet = useBench((bench) => bench.sheet)
  const opened = useBench((bench) => bench.opened?.id)
  useEffect(() => {
    const page = useBench.getState().opened?.job.sheets.find(({ id }) => id === sheet)?.scan
    const corners = pickedCorners(picks)
    if (picks.tool.kind !== 'figure' || !isComplete(picks) || corners === null || page === undefined) {
      putAwayFigure()
      return
    }
    const outline = outlineBetween(...corners, page)
    const xs = outline.map(([x]) => x)
    const ys = outline.map(([, y]) => y)
    const [x, y] = [Math.min(...xs), Math.min(...ys)]
    const box = { x, y, width: Math.max(1, Math.max(...xs) - x), height: Math.max(1, Math.max(...ys) - y) }
    if (sheet !== null) void readFigure(sheet, box, null)
  }, [picks, sheet])
  // What was read before is there again as a sheet comes to the bench.
  useEffect(() => {
    if (sheet !== null && opened !== undefined && useBench.getState().readings[sheet] === undefined) {
      void getReadings(sheet)
    }
  }, [sheet, opened])
}

function OneFigure() {
  const writable = useBench((bench) => bench.opened?.writable === true)
  const inHand = useBench(({ picks }) => picks.tool.kind === 'figure')
  if (!writable) return null
  return (
    <Section title="One figure">
      {inHand ? (
        <p className="block-soft">
          Drag a box close round it, whichever way it is turned, with all of its fraction. With Shift and a
          click a box that was found is taken up. Space and drag move the sheet.
        </p>
      ) : (
        <div className="block-row">
          <Button icon="read" shortcut={FIGURE_KEY} onPress={() => takeUpToWork({ kind: 'figure' })}>
            Drag a box round a figure
          </Button>
        </div>
      )}
    </Section>
  )
}
