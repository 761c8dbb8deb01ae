import { useRef } from 'react'

/** The same functions for good that always do what the newest ones do. Not for use while rendering. */
export function useSteady<T extends object>(newest: T): T {
  const current = useRef(newest)
  current.current = newest
  const steady = useRef<T | null>(null)
  steady.current ??= new Proxy(newest, { get: (_, name) => Reflect.get(current.current, name) })
  return steady.current
}
