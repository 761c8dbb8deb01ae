import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'

const night = matchMedia('(prefers-color-scheme: dark)')

/** Keeps the page in the light that was chosen. */
export function useTheme(): void {
  const theme = useBench((bench) => bench.theme)
  useEffect(() => {
    const set = () => {
      document.documentElement.dataset['theme'] =
        theme === 'system' ? (night.matches ? 'dark' : 'light') : theme
    }
    set()
    night.addEventListener('change', set)
    return () => night.removeEventListener('change', set)
  }, [theme])
}
