import { useState } from 'react'
import type { Instrument, Job } from '../../core/job/model/types.ts'
import { makeThen } from '../bench/edits.ts'
import { enteredBy } from '../bench/signature.ts'
import { Button } from '../parts/button.tsx'
import { removalOf, usesOfInstrument } from './instrument-edits.ts'

interface OneInstrumentProps {
  job: Job
  instrument: Instrument
  atHand: boolean
  writable: boolean
  onTake: () => void
  onChange: () => void
}

/** So many dimensions are named; of more it is said how many. */
const NAMED = 4

/** One instrument: what it shows, what rests on it, and to take it up, change it or take it away. */
export function OneInstrument({ job, instrument, atHand, writable, onTake, onChange }: OneInstrumentProps) {
  const [removing, setRemoving] = useState(false)
  const { id, name, resolution, limit, note } = instrument
  const uses = usesOfInstrument(job, id)
  const entered = enteredBy(job, instrument)
  return (
    <li className="instruments-one" data-at-hand={atHand || undefined}>
      <div className="instruments-name">
        {name}
        <p className="block-soft">
          {`shows ${resolution}`}
          {limit === undefined ? '; what it may be off by is not known' : `; within ± ${limit}`}
          {`; ${restsOn(uses.map((use) => use.label || use.dimension))}`}
        </p>
        {note !== undefined && <p className="block-soft">{note}</p>}
        {entered !== null && <p className="block-soft">{`Entered by ${entered}`}</p>}
      </div>
      <Button label={`${atHand ? 'In use' : 'Use'}: ${name}`} disabled={atHand} onPress={onTake}>
        {atHand ? 'In use' : 'Use'}
      </Button>
      <Button label={`Change ${name}`} disabled={!writable} onPress={onChange}>
        Change
      </Button>
      <Button
        kind="quiet"
        icon="bin"
        label={`Remove ${name}`}
        disabled={!writable || removing}
        onPress={() => {
          if (uses.length > 0) setRemoving(true)
          else void makeThen((now) => ({ edit: removalOf(now, instrument) }))
        }}
      />
      {removing && (
        <div className="instruments-remove block-words" role="alert">
          <p>
            {`${uses.length === 1 ? 'One set' : `${uses.length} sets`} of readings name${uses.length === 1 ? 's' : ''} it. They stay, and then name no instrument: their ± becomes a coarse one.`}
          </p>
          <div className="block-row">
            <Button
              kind="danger"
              onPress={() => void makeThen((now) => ({ edit: removalOf(now, instrument) }))}
            >
              Remove it
            </Button>
            <Button onPress={() => setRemoving(false)}>Cancel</Button>
          </div>
        </div>
      )}
    </li>
  )
}

/** `nothing rests on it yet`; `3 sets of readings rest on it: Drum, length; Hood, height`. */
function restsOn(labels: readonly string[]): string {
  if (labels.length === 0) return 'nothing rests on it yet'
  const each = [...new Set(labels)]
  const more = each.length > NAMED ? `; and ${each.length - NAMED} more` : ''
  const sets = labels.length === 1 ? '1 set of readings rests' : `${labels.length} sets of readings rest`
  return `${sets} on it: ${each.slice(0, NAMED).join('; ')}${more}`
}
