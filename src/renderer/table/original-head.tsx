import { Button } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { takeUpInstrument, useInstrumentAtHand } from '../instruments/at-hand.ts'
import { askForInstruments } from '../instruments/instruments-asked.ts'
import { Icon } from '../parts/icon.tsx'

/** In the head of the readings on the original: what they are taken with, and a way to change that. */
export function OriginalHead() {
  const name = useInstrumentAtHand()?.name
  const open = useBench(({ opened }) => opened !== null)
  const said = name === undefined ? 'no instrument named' : `by ${name}`
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a press on the button is none on the heading round it
    // biome-ignore lint/a11y/useKeyWithClickEvents: the button hears its keys itself
    <span className="table-head-instrument" onClick={(event) => event.stopPropagation()}>
      <Button
        className="table-head-instrument-button"
        aria-label={`${said}, change the instrument`}
        isDisabled={!open}
        onPress={() => askForInstruments({ for: 'all', onTake: takeUpInstrument })}
      >
        <span className="table-head-instrument-name">{said}</span>
        <Icon name="down" />
      </Button>
    </span>
  )
}
