/**
 * A process of its own that cuts the tiles of one sheet, so that it can be stopped at any time and what it used is
 * given back. It is told what to cut by one message, tells how far it is, and ends with whoever started it.
 */
import { systemReason } from '../files/system-reason.ts'
import { cutTiles } from './cut-tiles.ts'
import type { FromPyramid, ToPyramid } from './pyramid-messages.ts'

const tell = (message: FromPyramid): Promise<void> =>
  new Promise((resolve) => {
    if (process.send === undefined || !process.connected) resolve()
    else process.send(message, undefined, undefined, () => resolve())
  })

// An orderly exit would wait for the picture that is being decoded.
process.on('disconnect', () => process.kill(process.pid, 'SIGKILL'))
process.once('message', (wanted: ToPyramid) => {
  void cutTiles(wanted, (tiles) => void tell({ kind: 'tiles', tiles }))
    .then(() => tell({ kind: 'done' }))
    .catch((error: unknown) => tell({ kind: 'failed', because: systemReason(error) }))
    .finally(() => process.exit())
})
