import { useState } from 'react'

/** A number between `least` and `most` that is remembered on this machine. */
export function useRemembered(key: string, first: number, least: number, most: number) {
  const held = (value: number): number => Math.min(most, Math.max(least, value))
  const [value, setValue] = useState(() => {
    const kept = Number(localStorage.getItem(key) ?? first)
    return held(Number.isFinite(kept) ? kept : first)
  })
  const set = (next: number): void => {
    setValue(held(next))
    localStorage.setItem(key, String(held(next)))
  }
  return [value, set] as const
}
