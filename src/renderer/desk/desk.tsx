import './desk.css'
import { useEffect, useRef } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { choose, isDeskTaken, liesOnDesk, putDown } from '../bench/choose.ts'
import type { Selection } from '../bench/selection.ts'
import { STATION_NAMES } from '../bench/stations.ts'
import { DimensionCard } from '../card/dimension-card.tsx'
import { measureWords, pickSentence } from '../guide/pick-sentences.ts'
import { Button } from '../parts/button.tsx'
import { LongWork } from '../told/long-work.tsx'
import { DeskHead } from './desk-head.tsx'
import { MarkCard } from './mark/mark-card.tsx'
import { RepeatDesk } from './mark/repeat-desk.tsx'
import { NoteCard } from './notes/note-card.tsx'
import { NotesShelf } from './notes/notes-shelf.tsx'
import { Noting } from './notes/noting.tsx'
import { PickDesk } from './pick/pick-desk.tsx'
import { ReadDesk } from './read/read-desk.tsx'
import { ScaleDesk } from './scale/scale-desk.tsx'
import { SheetDesk } from './sheet/sheet-desk.tsx'

/** The desk beside the sheet: what the station offers, or the card of what is chosen. */
export function Desk() {
  const station = useBench((bench) => bench.station)
  const card = useBench(({ selection }) => (selection !== null && liesOnDesk(selection) ? selection : null))
  const scroll = useRef<HTMLDivElement>(null)
  // What is laid on the desk is read from its head.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another station or card is what this waits for
  useEffect(() => scroll.current?.scrollTo({ top: 0 }), [station, card])
  return (
    <aside className="desk" aria-label={`Desk: ${STATION_NAMES[station]}`} data-region="desk">
      <div className="desk-scroll" ref={scroll}>
        <OnDesk />
      </div>
      <NotesShelf />
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
        <strong>{measureWords(picks.tool).label}</strong> is still in hand for the next one.{' '}
        {pickSentence(picks)}
      </p>
      <Button kind="quiet" onPress={putDown}>
        Cancel
      </Button>
    </div>
  )
}

function CardOf({ selection }: { selection: Selection }) {
  // By the choice and not by the name: what is written on a card stays when its dimension is given another name.
  const choice = useBench((bench) => bench.choice)
  switch (selection.kind) {
    case 'mark':
      return <MarkCard id={selection.id} key={selection.id} />
    case 'note':
      return <NoteCard id={selection.id} key={selection.id} />
    case 'dimension':
      return <DimensionCard name={selection.name} key={choice} />
    default:
      return null
  }
}

/** What a station offers. */
function StationDesk() {
  const station = useBench((bench) => bench.station)
  switch (station) {
    case 'sheet':
      return <SheetDesk />
    case 'scale':
      return <ScaleDesk />
    case 'pick':
      return <PickDesk />
    case 'read':
      return <ReadDesk />
  }
}

function OnDesk() {
  const station = useBench((bench) => bench.station)
  const selection = useBench((bench) => bench.selection)
  const taken = useBench((bench) => isDeskTaken(bench.picks))
  const repeating = useBench(({ picks: { tool } }) => tool.kind === 'repeat')
  const noting = useBench(({ picks: { tool } }) => tool.kind === 'note')
  if (!taken && selection !== null && liesOnDesk(selection)) {
    return (
      <>
        <div className="desk-back">
          <Button kind="quiet" icon="back" onPress={() => choose(null)}>
            Back to {STATION_NAMES[station]}
          </Button>
        </div>
        <ToolInHand />
        <CardOf selection={selection} />
      </>
    )
  }
  if (repeating) return <RepeatDesk />
  return (
    <>
      <DeskHead />
      {noting ? <Noting /> : <StationDesk />}
    </>
  )
}
