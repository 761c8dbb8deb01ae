import { useRef, useState } from 'react'

interface Kept<T> {
  /** What was entered last while that is still on its way; else what is kept. */
  shown: T
  /** Keeps a value, also while another is on its way. False when it was refused. */
  keep: (value: T) => Promise<boolean>
}

/**
 * Keeps what is entered in one control, and shows it while it is on its way, so that whatever is entered meanwhile is
 * held against that and not against what it replaces.
 * @param value what is kept
 * @param onSave keeps a value, after all before it; false when it was refused
 */
export function useKept<T>(value: T, onSave: (value: T) => Promise<boolean>): Kept<T> {
  const [onItsWay, setOnItsWay] = useState<{ value: T } | null>(null)
  const count = useRef(0)
  const keep = async (next: T): Promise<boolean> => {
    count.current++
    setOnItsWay({ value: next })
    try {
      return await onSave(next)
    } finally {
      count.current--
      if (count.current === 0) setOnItsWay(null)
    }
  }
  return { shown: onItsWay === null ? value : onItsWay.value, keep }
}
