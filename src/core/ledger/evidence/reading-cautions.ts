import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { reason } from '../../words/core-words.ts'
import { nameItemsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'
import { readReading } from './found-reading.ts'

/** Readings of one length further apart than this share of it were hardly taken of one thing. Common practice, no source. */
const TOO_FAR_APART = 0.1

/** Names every piece of a dimension's found evidence whose readings look like a slip. */
export function readingCautions({ name, kind, evidence }: Dimension, conventions: Conventions): AnyReason[] {
  if (kind !== 'length') return []
  const cautions: AnyReason[] = []
  for (const e of evidence) {
    if (e.basis !== 'found' || e.withdrawn !== undefined || e.readings.length < 2) continue
    const read = e.readings.map((text) => ({ text, mm: lengthOf(text, conventions) }))
    const known = read.filter((r) => r.mm !== null).sort((a, b) => Number(a.mm) - Number(b.mm))
    const [least, most] = [known[0], known.at(-1)]
    if (least === undefined || most === undefined) continue
    if (Number(most.mm) - Number(least.mm) <= TOO_FAR_APART * Math.abs(Number(most.mm))) continue
    cautions.push(
      nameItemsIn(
        reason('caution.readings-far-apart', {
          dimension: name,
          evidence: e.id,
          least: least.text,
          most: most.text,
        }),
        [e],
      ),
    )
  }
  return cautions
}

function lengthOf(text: string, conventions: Conventions): number | null {
  try {
    return readReading(text, 'length', conventions).value
  } catch (error) {
    if (error instanceof NotationError) return null
    throw error
  }
}
