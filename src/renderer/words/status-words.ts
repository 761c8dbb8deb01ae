import type { Status } from '../../core/ledger/table/table.ts'

/** How the evidence of a dimension stands. */
export const STATUS_WORDS: Readonly<Record<Status, string>> = {
  agreed: 'independent pieces of evidence agree',
  single: 'nothing independent checks it',
  disputed: 'the evidence disagrees',
  open: 'no evidence can be used',
}
