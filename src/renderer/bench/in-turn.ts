import { useBench } from './bench-store.ts'

/** What was asked for last; what comes next waits for it. */
let last: Promise<unknown> = Promise.resolve()

/** How many edits were not kept so far. */
let refused = 0

/**
 * Does what changes the job after all that was asked for before it, so that everything is kept in the order in which it
 * was entered. As long as something waits or is on its way, the window says so.
 */
export function inTurn<T>(task: () => Promise<T>): Promise<T> {
  useBench.setState(({ keeping }) => ({ keeping: keeping + 1 }))
  const done = last.then(task).finally(() => useBench.setState(({ keeping }) => ({ keeping: keeping - 1 })))
  last = done.catch(() => undefined)
  return done
}

/** To be called when an edit was not kept. */
export function countRefused(): void {
  refused++
}

/** Whether all that is on its way is kept, once none is any more. */
export async function isAllKept(): Promise<boolean> {
  const before = refused
  while (useBench.getState().keeping > 0) await last
  return refused === before
}
