import { lengthContext } from '../../../core/job/model/length-context.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { lengthIn } from '../../../core/quantity/length.ts'
import { type KnownSizeOf, parseKnownSize } from '../../../core/quantity/parse/parse-known-size.ts'

/** What a known size was read as, in the unit of the job and as a decimal: `Read as 24.625"`. Empty where it can't be read. */
export function readAs(job: Job, text: string, of: KnownSizeOf): string {
  if (text.trim() === '') return ''
  try {
    const size = lengthIn(parseKnownSize(text, of, lengthContext(job)), job.unit)
    return `Read as ${Number(size.toFixed(6))}${job.unit === 'in' ? '"' : ' mm'}.`
  } catch {
    // Why it can't be read is said by the field.
    return ''
  }
}
