import type { Workbench } from '../services/workbench/workbench.ts'

/** What this host carries. */
export type ServedWorkbench = Pick<
  Workbench,
  'ask' | 'listen' | 'greet' | 'picture' | 'receiveScan' | 'close'
>
