import type { View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, goTo, putDown, setPicks } from '../../bench/choose.ts'
import { calibratedViews } from '../../guide/guide.ts'
import { HOLES_WORDS, MEASURE_WORDS, SLOT_WORDS } from '../../guide/pick-sentences.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Section } from '../../parts/section.tsx'
import { isSlot, isThroughHoles, type Tool, type ToolMeasure } from '../../picking/tool.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { PickAt } from '../in-hand/pick-at.tsx'
import {
  HOLES_KEY,
  keyOf,
  MEASURES,
  SLOT_KEY,
  slotIn,
  takeUpToWork,
  throughHoles,
} from '../in-hand/tool-keys.ts'
import { Caution } from '../keeping/caution.tsx'

const OPTIONS = MEASURES.map((id, place) => ({
  id,
  label: MEASURE_WORDS[id].label,
  icon: id,
  key: keyOf(place),
}))

/** The circle through holes is no measure of its own: its diameter is measured, and it is picked otherwise. */
const HOLES = { id: 'holes', label: HOLES_WORDS.label, icon: 'holes', key: HOLES_KEY } as const

/** Nor is a slot, which has several sizes. */
const SLOT = { id: 'slot', label: SLOT_WORDS.label, icon: 'slot', key: SLOT_KEY } as const

type Chosen = ToolMeasure | 'holes' | 'slot'

function wordsOf(chosen: Chosen) {
  if (chosen === 'slot') return SLOT_WORDS
  return chosen === 'holes' ? HOLES_WORDS : MEASURE_WORDS[chosen]
}

function chosenBy(tool: Tool): Chosen | null {
  if (tool.kind !== 'measure') return null
  if (isSlot(tool)) return SLOT.id
  return isThroughHoles(tool) ? HOLES.id : tool.measure
}

function toolFor(chosen: Chosen, view: string): Tool {
  if (chosen === 'slot') return slotIn(view)
  return chosen === 'holes' ? throughHoles(view) : { kind: 'measure', view, measure: chosen }
}

/** What to measure, and in which view. */
export function MeasureChoice({ view }: { view: View | undefined }) {
  const job = useBench((bench) => bench.opened?.job)
  const table = useBench((bench) => bench.table)
  const sheet = useBench((bench) => bench.sheet)
  const picks = useBench((bench) => bench.picks)
  const writable = useBench((bench) => bench.opened?.writable === true)
  if (job === undefined) return null
  const { tool } = picks
  const measure = chosenBy(tool)
  const calibrated = calibratedViews(job, table)
  const isCalibrated = calibrated.some(({ id }) => id === view?.id)
  const views = job.views
    .filter((one) => one.sheet === sheet)
    .map((one) => ({
      id: one.id,
      label: one.name,
      ...(calibrated.includes(one) ? {} : { note: 'No scale yet' }),
    }))
  return (
    <>
      <Section title="What to measure">
        <Choice
          label="What to measure"
          hideLabel
          value={measure}
          options={[...OPTIONS, HOLES, SLOT]}
          columns={3}
          disabled={!writable || view === undefined}
          note={measure === null ? 'Choose one; then pick it on the sheet.' : wordsOf(measure).what}
          onChange={(chosen) => {
            if (view !== undefined) takeUpToWork(toolFor(chosen, view.id))
          }}
        />
        {views.length > 0 && view !== undefined && (
          <Picker
            label="In the view"
            value={view.id}
            options={views}
            onChange={(id) => {
              useLastUsed.setState({ view: id })
              if (tool.kind === 'measure') setPicks({ ...picks, tool: { ...tool, view: id } })
              else choose({ kind: 'view', id })
            }}
            note="The first pick chooses the view that it lies in."
          />
        )}
        {!isCalibrated && <NotCalibrated view={view} />}
      </Section>
      {measure !== null && (
        <Section title="Picks">
          <PickAt />
          <div className="block-row">
            <Button onPress={putDown}>Cancel</Button>
          </div>
        </Section>
      )}
    </>
  )
}

function NotCalibrated({ view }: { view: View | undefined }) {
  return (
    <Caution>
      <p>
        {view === undefined
          ? 'This sheet has no view yet, so there is nothing to measure by.'
          : `“${view.name}” has no scale yet: what is picked in it has no size.`}
      </p>
      <Button
        onPress={() => {
          goTo('scale')
          if (view !== undefined) choose({ kind: 'view', id: view.id })
        }}
      >
        Go to Scale
      </Button>
    </Caution>
  )
}
