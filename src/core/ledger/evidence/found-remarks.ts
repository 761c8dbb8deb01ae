import type { Instrument } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Reading } from './found-reading.ts'
import type { FoundScatter } from './found-scatter.ts'
import { finelyWritten } from './found-spread.ts'

/** What a person should know of how the uncertainty of some readings came about. */
export function foundRemarks(
  readings: readonly (Reading & { text: string })[],
  instrument: Instrument | undefined,
  scatter: FoundScatter | undefined,
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
