import './desk.css'
import { useBench } from '../bench/bench-store.ts'
import { choose, putDown } from '../bench/choose.ts'
import { MEASURE_WORDS, pickSentence } from '../bench/pick-words.ts'
import { STATION_NAMES } from '../bench/stations.ts'
import { DimensionCard } from '../card/dimension-card.tsx'
import { LongWork } from '../frame/long-work.tsx'
import { Button } from '../parts/button.tsx'
import { DeskHead } from './desk-head.tsx'
import { MarkCard } from './mark-card.tsx'
import { StationDesk } from './station-desk.tsx'

/** The desk beside the sheet: what the station offers, or the card of what is chosen. */
export function Desk() {
  const station = useBench((bench) => bench.station)
  return (
    <aside className="desk" aria-label={`Desk: ${STATION_NAMES[station]}`} data-region="desk">
      <div className="desk-scroll">
        <OnDesk />
      </div>
      <LongWork />
    </aside>
  )
}

/** The tool that is still up while a card lies on the desk, and what to pick with it. */
function ToolInHand() {
  const picks = useBench((bench) => bench.picks)
  if (picks.tool.kind !== 'measure') return null
  return (
    <div className="desk-tool">
      <p>
        <strong>{MEASURE_WORDS[picks.tool.measure].label}</strong> is still in hand for the next one.{' '}
        {pickSentence(picks)}
      </p>
      <Button kind="quiet" onPress={putDown}>
        Put it down
      </Button>
    </div>
  )
}

function OnDesk() {
  const station = useBench((bench) => bench.station)
  const selection = useBench((bench) => bench.selection)
  const picking = useBench((bench) => bench.picks.features.length > 0)
  if (!picking && (selection?.kind === 'dimension' || selection?.kind === 'mark')) {
    return (
      <>
        <div className="desk-back">
          <Button kind="quiet" icon="back" onPress={() => choose(null)}>
            Back to {STATION_NAMES[station]}
          </Button>
        </div>
        <ToolInHand />
        {selection.kind === 'mark' ? (
          <MarkCard id={selection.id} key={selection.id} />
        ) : (
          <DimensionCard name={selection.name} key={selection.name} />
        )}
      </>
    )
  }
  return (
    <>
      <DeskHead />
      <StationDesk />
    </>
  )
}
