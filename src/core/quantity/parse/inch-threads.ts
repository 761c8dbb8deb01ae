import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { FigureDraft } from './figure-draft.ts'
import { asInches } from './read-length.ts'

/** No such thread is larger, mm: Whitworth's own end at six inches. Source: BS 84, from memory. */
const LARGEST = new Fraction(1524n, 10n)

/** Whether a thread is one of inches whatever the sheet is in: all that are named here but the metric one. */
const isOfInches = ({ form, perInch }: NonNullable<FigureDraft['thread']>): boolean =>
  form !== 'M' && (perInch !== undefined || !form.startsWith('THD.'))

/** Takes a bare size on a metric sheet for inches where its thread is one of inches: `1/2 WHIT.` */
export function settleInchThread(reader: TokenReader, draft: FigureDraft): void {
  const { thread, read, length } = draft
  if (thread === undefined || read?.unit !== undefined || read === undefined || !isOfInches(thread)) return
  if (length?.system !== 'mm') return
  const inches = asInches(read.number)
  if (draft.tolerance !== undefined || inches.mm.compare(LARGEST) > 0) {
    throw reader.error(reason('notation.thread-of-inches', { form: thread.form }), read.number.first)
  }
  draft.length = inches
}
