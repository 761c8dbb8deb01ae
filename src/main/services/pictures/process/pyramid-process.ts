/**
 * A process of its own that makes pictures of one sheet, so that it can be stopped at any time and what it used is
 * given back. It is told what to make by one message, tells how far it is, and ends with whoever started it.
 */
import { systemReason } from '../../files/system-reason.ts'
import { watchOwnMemory } from '../../process/watch-own-memory.ts'
import { makePictures } from './make-pictures.ts'
import type { FromPyramid, ToPyramid } from './pyramid-messages.ts'

const tell = (message: FromPyramid): Promise<void> =>
  new Promise((resolve) => {
    if (process.send === undefined || !process.connected) resolve()
    else process.send(message, undefined, undefined, () => resolve())
  })

// An orderly exit would wait for the picture that is being decoded.
process.on('disconnect', () => process.kill(process.pid, 'SIGKILL'))
process.once('message', (order: ToPyramid) => {
  const stopWatching = watchOwnMemory(order.memory, () => {
    const megabytes = Math.round(order.memory / 1024 ** 2).toLocaleString('en')
    const because = `it takes more memory than the ${megabytes} MB that reading a scan may use`
    void tell({ kind: 'failed', because }).finally(() => process.kill(process.pid, 'SIGKILL'))
  })
  void makePictures(order, (message) => void tell(message))
    .then(() => tell({ kind: 'done' }))
    .catch((error: unknown) => tell({ kind: 'failed', because: systemReason(error) }))
    .finally(() => {
      stopWatching()
      process.exit()
    })
})
