import './instruments-dialog.css'
import { useEffect, useState } from 'react'
import type { Instrument } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { useInstrumentAtHand } from './at-hand.ts'
import { InstrumentForm } from './instrument-form.tsx'
import { endInstruments, useInstrumentsAsked } from './instruments-asked.ts'
import { OneInstrument } from './one-instrument.tsx'

/** What is being written; null: the list is shown. */
type Writing = { id: string } | 'new' | null

const titleOf = (writing: Writing, before: Instrument | undefined): string =>
  writing === null
    ? 'Instruments of this job'
    : before === undefined
      ? 'New instrument'
      : `Change ${before.name}`

/** The instruments of the job: to take one up, and to define, change or take away any. */
export function InstrumentsDialog() {
  const asked = useInstrumentsAsked((state) => state.asked)
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const atHand = useInstrumentAtHand()
  const [writing, setWriting] = useState<Writing>(null)
  useEffect(() => {
    setWriting(asked?.for === 'new' ? 'new' : null)
  }, [asked])
  if (job === undefined || asked === null) return null
  const take = (instrument: string | null) => {
    asked.onTake(instrument)
    endInstruments()
  }
  const before =
    writing === null || writing === 'new' ? undefined : job.instruments.find(({ id }) => id === writing.id)
  const shut = () => (asked.for === 'new' ? endInstruments() : setWriting(null))
  return (
    <Dialog title={titleOf(writing, before)} open onClose={endInstruments} wide>
      {writing !== null && writable ? (
        <InstrumentForm
          key={before?.id ?? 'new'}
          job={job}
          before={before}
          onKept={(id) => (before === undefined ? take(id) : shut())}
          onCancel={shut}
        />
      ) : (
        <>
          {job.instruments.length === 0 && (
            <p>
              None yet. Name what readings are taken with, and how finely it measures: by that their ± is
              reckoned.
            </p>
          )}
          <ul className="instruments-list">
            {job.instruments.map((instrument) => (
              <OneInstrument
                key={instrument.id}
                job={job}
                instrument={instrument}
                atHand={instrument.id === atHand?.id}
                writable={writable}
                onTake={() => take(instrument.id)}
                onChange={() => setWriting({ id: instrument.id })}
              />
            ))}
          </ul>
          <div className="block-row">
            <Button icon="plus" disabled={!writable} onPress={() => setWriting('new')}>
              New instrument…
            </Button>
            <Button disabled={atHand === undefined} onPress={() => take(null)}>
              Read with none named
            </Button>
          </div>
        </>
      )}
    </Dialog>
  )
}
