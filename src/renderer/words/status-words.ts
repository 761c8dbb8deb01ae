import type { Status } from '../../core/ledger/table/table.ts'

/** How the evidence of a dimension stands. */
export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  agreed: 'two or more pieces of evidence agree',
  single: 'only one piece of evidence that can be used',
  disputed: 'evidence contradicts evidence',
  open: 'no evidence that can be used',
}
