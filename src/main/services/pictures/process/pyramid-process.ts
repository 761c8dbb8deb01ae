/**
 * A process of its own that makes pictures of one sheet, so that it can be stopped at any time and what it used is
 * given back.
 */
import { systemCause } from '../../files/system-reason.ts'
import { serveParent } from '../../process/serve-parent.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import { makePictures } from './make-pictures.ts'
import type { PYRAMID_PROTOCOL, PyramidOrder } from './pyramid-protocol.ts'

void serveParent<PyramidOrder, typeof PYRAMID_PROTOCOL>({
  does: makePictures,
  refusal: (error) => ({ because: error instanceof PyramidError ? error.reason : systemCause(error) }),
})
