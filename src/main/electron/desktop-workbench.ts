import type { Workbench } from '../services/workbench/workbench.ts'

/** What the desktop host has of the workbench. */
export type DesktopWorkbench = Pick<
  Workbench,
  'ask' | 'listen' | 'picture' | 'receiveScan' | 'openFolder' | 'openSample' | 'close'
>
