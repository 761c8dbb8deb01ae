import type { Instrument } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Reading } from './found-reading.ts'
import type { FoundScatter } from './found-scatter.ts'
import { finelyWritten } from './found-spread.ts'

/** So many times what a reading may be off by in any case is no scatter of readings. Common practice, no source. */
const FAR = 5

const apart = (readings: readonly Reading[], { s }: FoundScatter, limit: number): boolean =>
  readings.length > 1 && s > FAR * Math.max(limit, Math.min(...readings.map(({ graduation }) => graduation)))

/**
 * What a person should know of how the uncertainty of some readings came about.
 * @param limit that the instrument may be off by, mm or radians; 0 where nothing is known
 */
export function foundRemarks(
  readings: readonly (Reading & { text: string })[],
  instrument: Instrument | undefined,
  scatter: FoundScatter | undefined,
  limit: number,
): AnyReason[] {
  const remarks: AnyReason[] = []
  if (instrument === undefined) {
    const [fine] = finelyWritten(readings)
    // A count that is written down is as exact as any.
    if (fine !== undefined && fine.graduation > 0) {
      remarks.push(reason('evidence.instrument-unnamed', { text: fine.text }))
      const coarse = readings.filter((one) => !finelyWritten(readings).includes(one))
      if (coarse.length > 0)
        remarks.push(reason('evidence.readings-coarse', { texts: coarse.map(({ text }) => text) }))
    }
  }
  if (instrument === undefined && scatter !== undefined && apart(readings, scatter, limit)) {
    remarks.push(reason('evidence.readings-differ', { texts: readings.map(({ text }) => text) }))
  }
  if (scatter?.from === 'set') {
    remarks.push(reason('evidence.readings-apart', { instrument: instrument?.name ?? null }))
  }
  if (scatter?.from === 'guess' && instrument !== undefined) {
    const { name, limit } = instrument
    remarks.push(
      reason('evidence.scatter-guessed', { instrument: name, by: limit === undefined ? 'step' : 'limit' }),
    )
  }
  return remarks
}
