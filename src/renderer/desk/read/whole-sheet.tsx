import './whole-sheet.css'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { SheetReadings } from '../../../contract/readings.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose } from '../../bench/choose.ts'
import { readSheet, stopReading } from '../../bench/readings.ts'
import { onTheBench } from '../../camera/look-at.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { type FigureOnSheet, figuresOnSheet } from '../../reading/found-figures.ts'
import { FigureForm } from './figure-form.tsx'
import { FoundList } from './found-list.tsx'
import { useListOrder } from './list-order.ts'
import { FigureCrop, ReadAs } from './read-figure.tsx'

const NOTHING: SheetReadings['figures'] = []

/** A figure of the list that is being taken, and whether it is to be written otherwise. */
interface Taking {
  id: number
  writes: boolean
}

interface WholeSheetProps {
  job: Job
  sheet: string
  /** Stands over the list, and not over a figure that is being taken from it. */
  children: ReactNode
}

/** All figures of a sheet: found and read in the background, and gone through one by one. */
export function WholeSheet({ job, sheet, children }: WholeSheetProps) {
  const readings = useBench((bench) => bench.readings[sheet])
  const writable = useBench((bench) => bench.opened?.writable === true)
  const [taking, setTaking] = useState<Taking | null>(null)
  const whole = readings?.progress.state === 'ready'
  const found = figuresOnSheet(job, sheet, readings?.figures ?? NOTHING)
  const taken = found.find(({ id }) => id === taking?.id)
  if (taking !== null && taken !== undefined) {
    return (
      <TakeFound
        job={job}
        sheet={sheet}
        figure={taken}
        writes={taking.writes}
        onEnd={() => setTaking(null)}
      />
    )
  }
  return (
    <>
      {children}
      <Section title="All figures of this sheet" aside={<HowMany found={found} whole={whole} />}>
        <Progress sheet={sheet} readings={readings} writable={writable} />
        {found.length > 0 && (
          <FoundList
            sheet={sheet}
            found={found}
            whole={whole}
            writable={writable}
            onTake={(id, writes) => setTaking({ id, writes })}
          />
        )}
      </Section>
    </>
  )
}

/** @param whole whether all of the sheet is read by now */
function HowMany({ found, whole }: { found: readonly FigureOnSheet[]; whole: boolean }) {
  if (found.length === 0) return null
  const open = found.filter(({ state }) => state === 'open').length
  return (
    <span className="block-soft">
      {open > 0 ? `${open} to look at` : whole ? 'all looked at' : 'all so far looked at'}
    </span>
  )
}

/** Where the sheet is looked at: figures round there are read first. */
const lookedAt = () => {
  const centre = onTheBench()?.camera.centre
  return centre === undefined ? null : { x: centre[0], y: centre[1] }
}

function Progress({
  sheet,
  readings,
  writable,
}: {
  sheet: string
  readings: SheetReadings | undefined
  writable: boolean
}) {
  const { state, sentence } = readings?.progress ?? { state: 'unread', sentence: '' }
  const begin = () => void readSheet(sheet, lookedAt())
  switch (state) {
    case 'unread':
      return (
        <>
          <p className="block-soft">
            Every figure on the sheet is found and read while you go on working. Nothing of it enters the
            table until you take it.
          </p>
          {writable && (
            <div className="block-row">
              <Button onPress={begin}>Read all figures</Button>
            </div>
          )}
        </>
      )
    case 'reading':
      return (
        <div className="block-row whole-sheet-going">
          <p className="block-beside" role="status">
            {sentence}
          </p>
          <Button onPress={() => void stopReading(sheet)}>Stop reading</Button>
        </div>
      )
    case 'stopped':
    case 'failed':
      return (
        <div className="block-row whole-sheet-going">
          <p className="block-beside" role="status" data-failed={state === 'failed' || undefined}>
            {sentence}
          </p>
          <Button onPress={begin}>Go on reading</Button>
        </div>
      )
    case 'ready':
      return (
        <p className="block-soft" role="status">
          {sentence}
        </p>
      )
  }
}

/** A figure of the list: as it stands, as it is read, and what it is taken for. */
function TakeFound(props: {
  job: Job
  sheet: string
  figure: FigureOnSheet
  writes: boolean
  onEnd: () => void
}) {
  const { job, sheet, figure, writes, onEnd } = props
  // What is read again meanwhile does not change under the hand of whoever is taking it.
  const [reading] = useState(figure.reading)
  const section = useRef<HTMLElement>(null)
  useEffect(() => {
    // The list may have been far down, and the figure as it stands on the sheet comes first.
    section.current?.scrollIntoView({ block: 'start' })
    useListOrder.setState({ taking: true })
    return () => useListOrder.setState({ taking: false })
  }, [])
  return (
    <section ref={section} className="figure-at-hand" aria-label="Figure of the list">
      <FigureCrop sheet={sheet} box={reading.box} angle={reading.angle} />
      <ReadAs reading={reading} />
      <FigureForm
        job={job}
        sheet={sheet}
        reading={reading}
        of={figure.taken?.dimension ?? null}
        writes={writes}
        onKept={() => {
          choose(null)
          onEnd()
        }}
        onAbandon={onEnd}
      />
    </section>
  )
}
