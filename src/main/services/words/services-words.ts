import { inWords as coreInWords } from '../../../core/words/core-words.ts'
import type { ReasonOf } from '../../../core/words/reason.ts'
import { speak } from '../../../core/words/speak.ts'
import { FIGURE_WORDS } from './figures.ts'
import { FILE_WORDS } from './files.ts'
import { HISTORY_WORDS } from './history.ts'
import { HOST_WORDS } from './hosts.ts'
import { JOB_FOLDER_WORDS } from './job-folder.ts'
import { JOURNAL_WORDS } from './journal.ts'
import { LIMIT_WORDS } from './limits.ts'
import { PICTURE_WORDS } from './pictures.ts'
import { SCAN_WORDS } from './scans.ts'
import { WORKBENCH_WORDS } from './workbench.ts'

/** Every reason that services and hosts have, each with its sentence: one file a room. */
const SERVICES = {
  ...FIGURE_WORDS,
  ...FILE_WORDS,
  ...HISTORY_WORDS,
  ...HOST_WORDS,
  ...JOB_FOLDER_WORDS,
  ...JOURNAL_WORDS,
  ...LIMIT_WORDS,
  ...PICTURE_WORDS,
  ...SCAN_WORDS,
  ...WORKBENCH_WORDS,
} as const

/** A reason that a service or a host gives. */
export type ServiceReason = ReasonOf<typeof SERVICES>

/** `inWords` says core's reasons too, which may be parts of these. */
export const { reason, inWords } = speak(SERVICES, coreInWords)
