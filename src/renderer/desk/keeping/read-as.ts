import { lengthContext } from '../../../core/job/model/length-context.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { formatLength } from '../../../core/quantity/format/format-length.ts'
import { lengthIn } from '../../../core/quantity/length.ts'
import { NotationError } from '../../../core/quantity/notation/notation-error.ts'
import { type KnownSizeOf, parseKnownSize } from '../../../core/quantity/parse/parse-known-size.ts'

/** What a figured size was read as, in the unit of the job and as a decimal: `Read as 2'-0 5/8", 24.625"`. Empty where it can't be read. */
export function readAs(job: Job, text: string, of: KnownSizeOf): string {
  if (text.trim() === '') return ''
  try {
    const length = parseKnownSize(text, of, lengthContext(job))
    const decimal = `${Number(lengthIn(length, job.unit).toFixed(6))}${job.unit === 'in' ? '"' : ' mm'}`
    const written = formatLength(length, { unit: job.unit, feet: length.feet })
    const both = length.system === job.unit && written !== decimal
    return `Read as ${both ? `${written}, ` : ''}${decimal}.`
  } catch (error) {
    // Why it can't be read is said by the field.
    if (error instanceof NotationError) return ''
    throw error
  }
}
