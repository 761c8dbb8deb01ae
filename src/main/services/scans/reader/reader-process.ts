/**
 * A process of its own that reads what strangers made: whatever a file does to it, the program and the job go on. It
 * does one thing after another, and ends with whoever started it.
 */
import { serveParent } from '../../process/serve-parent.ts'
import { ServiceError } from '../../service-error.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import { READ_PROTOCOL } from './read-protocol.ts'
import { readTask } from './read-task.ts'

await serveParent(READ_PROTOCOL, {
  does: readTask,
  refusal: (error, { called }) => ({
    sentence:
      error instanceof ServiceError
        ? error.message
        : `The scan ${called} is damaged, so it can't be read: copy or scan it again.`,
    locked: error instanceof ScanLocked,
  }),
})
