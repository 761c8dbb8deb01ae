import { type RefObject, useEffect } from 'react'

/** Brings something into sight whenever it is wanted there, by as little as that takes. */
export function useInSight(what: RefObject<HTMLElement | null>, wanted: boolean): void {
  useEffect(() => {
    if (wanted) what.current?.scrollIntoView({ block: 'nearest' })
  }, [what, wanted])
}
