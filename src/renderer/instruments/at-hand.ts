import { create } from 'zustand'
import type { Instrument, Job } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'

/** An instrument that was taken up in this window, by its id; null: it is not said which. */
interface TakenUp {
  job: string
  instrument: string | null
}

const useTakenUp = create<{ now: TakenUp | null }>(() => ({ now: null }))

/** From now on readings are taken with this one; null: it is not said which. */
export function takeUpInstrument(instrument: string | null): void {
  const job = useBench.getState().opened?.id
  if (job !== undefined) useTakenUp.setState({ now: { job, instrument } })
}

/**
 * The instrument of the newest readings of a job that name one, by its id; before there are any, that which was defined
 * last. null: none is.
 */
export function lastUsedInstrument(job: Job): string | null {
  const known = LAST_USED.get(job)
  if (known !== undefined) return known
  const last = newestNamed(job.dimensions) ?? job.instruments.at(-1)?.id ?? null
  LAST_USED.set(job, last)
  return last
}

/** Asked at every change of anything in the window. */
const LAST_USED = new WeakMap<Job, string | null>()

function newestNamed(dimensions: Job['dimensions']): string | undefined {
  let last: { at: string; instrument: string } | undefined
  for (const { evidence } of dimensions) {
    for (const piece of evidence) {
      if (piece.basis !== 'found' || piece.instrument === undefined) continue
      const at = piece.at ?? ''
      if (last === undefined || at >= last.at) last = { at, instrument: piece.instrument }
    }
  }
  return last?.instrument
}

/** With which readings are taken now; undefined: it is not said. */
export function instrumentAtHand(job: Job, opened: string, now: TakenUp | null): Instrument | undefined {
  const taken = now?.job === opened ? now.instrument : undefined
  // One that was removed since is at nobody's hand.
  const there = (id: string | null): Instrument | undefined => job.instruments.find((one) => one.id === id)
  if (taken === null) return undefined
  return (taken === undefined ? undefined : there(taken)) ?? there(lastUsedInstrument(job))
}

/** As `instrumentAtHand`, of the job that is open. */
export function useInstrumentAtHand(): Instrument | undefined {
  const now = useTakenUp((state) => state.now)
  return useBench(({ opened }) =>
    opened === null ? undefined : instrumentAtHand(opened.job, opened.id, now),
  )
}

/** The same, outside of what is drawn. */
export function currentInstrument(): Instrument | undefined {
  const { opened } = useBench.getState()
  return opened === null ? undefined : instrumentAtHand(opened.job, opened.id, useTakenUp.getState().now)
}
