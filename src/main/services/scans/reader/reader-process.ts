/**
 * A process of its own that reads what strangers made: whatever a file does to it, the program and the job go on. It
 * does one thing after another, and ends with whoever started it.
 */
import { watchMemory } from '../../process/watch-own-memory.ts'
import { ServiceError } from '../../service-error.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import { readTask } from './read-task.ts'
import type { FromReader, ToReader } from './reader-messages.ts'

const tell = (message: FromReader): void => {
  if (process.connected) process.send?.(message)
}

const die = (): void => void process.kill(process.pid, 'SIGKILL')

process.on('disconnect', die)
process.on('message', ({ id, order }: ToReader) => {
  const stopWatching = watchMemory(order.limits.memory, () => {
    if (process.connected) process.send?.({ kind: 'memory' } satisfies FromReader, die)
    else die()
  })
  readTask(order)
    .then((answer) => tell({ kind: 'answer', id, answer }))
    .catch((error: unknown) => tell(refusalOf(error, id, order.called)))
    .finally(stopWatching)
})
tell({ kind: 'ready' })

function refusalOf(error: unknown, id: number, called: string): FromReader {
  const sentence =
    error instanceof ServiceError
      ? error.message
      : `The scan ${called} is damaged, so it can't be read: copy or scan it again.`
  return { kind: 'refused', id, sentence, locked: error instanceof ScanLocked }
}

// From source its libraries are loaded as they are needed, which works for as long as this file is not at its end.
await new Promise(() => undefined)
