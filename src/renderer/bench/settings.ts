import { type BenchContents, useBench } from './bench-store.ts'

const THEME = 'scantling.theme'

/** Shows the window by day, by night or as the system does, and remembers it on this machine. */
export function lookBy(theme: BenchContents['theme']): void {
  useBench.setState({ theme })
  localStorage.setItem(THEME, theme)
}

/** Takes up what was remembered; called once, at the start. */
export function recallTheme(): void {
  const theme = localStorage.getItem(THEME)
  if (theme === 'light' || theme === 'dark') useBench.setState({ theme })
}
