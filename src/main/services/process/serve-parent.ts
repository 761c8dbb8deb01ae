import type { FromChild, NewsOf, Protocol, RefusalOf, ToChild } from './protocol.ts'
import { watchOwnMemory } from './watch-own-memory.ts'

/** What a process does for whoever started it. */
export interface Work<Order, P extends Protocol> {
  /** @param tell what is done meanwhile */
  does: (order: Order, tell: (news: NewsOf<P>) => void) => Promise<unknown>
  /** Why an order was not done, of what `does` threw. */
  refusal: (error: unknown, order: Order) => RefusalOf<P>
}

const die = (): void => void process.kill(process.pid, 'SIGKILL')

function send(message: FromChild, sent: () => void = () => undefined): void {
  if (process.connected) process.send?.(message, undefined, undefined, sent)
  else sent()
}

/**
 * Does what the process that started this one orders, as `ProcessPool` does, and ends with it. Listens from the moment
 * that it is called. Only one's own program can send it anything, and that checks what comes back: here no schema is
 * loaded, which would take as long as the rest of the beginning.
 * @returns never, so that a program that runs from source, whose libraries are loaded as they are needed, can stay
 */
export function serveParent<Order, P extends Protocol>({ does, refusal }: Work<Order, P>): Promise<never> {
  // An orderly exit would wait for a picture that is being decoded.
  process.on('disconnect', die)
  process.on('message', ({ id, memory, order: given }: ToChild) => {
    const order = given as Order
    const stopWatching = watchOwnMemory(memory, () => send({ kind: 'memory' }, die))
    does(order, (news) => send({ kind: 'news', id, news }))
      .then((answer) => send({ kind: 'answer', id, answer }))
      .catch((error: unknown) => send({ kind: 'refusal', id, refusal: refusal(error, order) }))
      .finally(stopWatching)
  })
  send({ kind: 'ready' })
  return new Promise(() => undefined)
}
