/**
 * A process of its own that reads what strangers made: whatever a file does to it, the program and the job go on. It
 * does one thing after another, and ends with whoever started it.
 */
import { serveParent } from '../../process/serve-parent.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import type { READ_PROTOCOL, ReadOrder } from './read-protocol.ts'
import { readTask } from './read-task.ts'

await serveParent<ReadOrder, typeof READ_PROTOCOL>({
  does: readTask,
  refusal: (error, { called }) => ({
    because: error instanceof ServiceError ? error.reason : reason('scan.damaged', { scan: called }),
    locked: error instanceof ScanLocked,
  }),
})
