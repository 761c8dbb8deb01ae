/**
 * A process of its own that reads figures, so that nothing else waits for it and it can be stopped at any time.
 */
import { systemCause } from '../../files/system-reason.ts'
import { PyramidError } from '../../pictures/faults/pyramid-error.ts'
import { serveParent } from '../../process/serve-parent.ts'
import type { FIGURE_PROTOCOL, FigureOrder } from './figure-protocol.ts'
import { FigureWork } from './figure-work.ts'

const work = new FigureWork()

await serveParent<FigureOrder, typeof FIGURE_PROTOCOL>({
  does: (order) => work.does(order),
  refusal: (error) => ({ because: error instanceof PyramidError ? error.reason : systemCause(error) }),
})
