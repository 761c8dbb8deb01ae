import type { LocalHost } from './serve.ts'

/** Lets the first interrupt or request to end close the job, saved; a second one ends the process as it is. */
export function closeOnSignals({ close, ended }: Pick<LocalHost, 'close' | 'ended'>): void {
  const end = (): void => {
    forget()
    void close().catch(() => undefined)
  }
  const forget = (): void => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.off(signal, end)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end)
  ended.then(forget, forget)
}
