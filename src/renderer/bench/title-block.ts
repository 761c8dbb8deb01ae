import type { TitleLabel } from '../../core/reading/labels/title-labels.ts'

/** What was read in the title block of a sheet. */
export type TitleBlock =
  | { is: 'being read' }
  | { is: 'read'; labels: readonly TitleLabel[] }
  /** Why not, in a sentence. */
  | { is: 'not read'; sentence: string }
