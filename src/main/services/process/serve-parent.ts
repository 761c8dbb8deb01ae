import {
  type FromChild,
  type NewsOf,
  type OrderOf,
  type Protocol,
  type RefusalOf,
  toChildSchema,
} from './protocol.ts'
import { watchOwnMemory } from './watch-own-memory.ts'

/** What a process does for whoever started it. */
export interface Work<P extends Protocol> {
  /** @param tell what is done meanwhile */
  does: (order: OrderOf<P>, tell: (news: NewsOf<P>) => void) => Promise<unknown>
  /** Why an order was not done, of what `does` threw. */
  refusal: (error: unknown, order: OrderOf<P>) => RefusalOf<P>
}

const die = (): void => void process.kill(process.pid, 'SIGKILL')

function send(message: FromChild, sent: () => void = () => undefined): void {
  if (process.connected) process.send?.(message, undefined, undefined, sent)
  else sent()
}

/**
 * Does what the process that started this one orders, as `ProcessPool` does, and ends with it. Listens from the moment
 * that it is called.
 * @returns never, so that a program that runs from source, whose libraries are loaded as they are needed, can stay
 */
export function serveParent<P extends Protocol>(protocol: P, { does, refusal }: Work<P>): Promise<never> {
  // An orderly exit would wait for a picture that is being decoded.
  process.on('disconnect', die)
  process.on('message', (message: unknown) => {
    const { id, memory, order: given } = toChildSchema.parse(message)
    const order = protocol.order.parse(given) as OrderOf<P>
    const stopWatching = watchOwnMemory(memory, () => send({ kind: 'memory' }, die))
    does(order, (news) => send({ kind: 'news', id, news }))
      .then((answer) => send({ kind: 'answer', id, answer }))
      .catch((error: unknown) => send({ kind: 'refusal', id, refusal: refusal(error, order) }))
      .finally(stopWatching)
  })
  send({ kind: 'ready' })
  return new Promise(() => undefined)
}
