import { type BenchContents, useBench } from './bench-store.ts'
import { SHOWS, type Shows } from './shows.ts'

const THEME = 'scantling.theme'
const SHOWN = 'scantling.shown-on-the-sheet'

/** Shows the window by day, by night or as the system does, and remembers it on this machine. */
export function lookBy(theme: BenchContents['theme']): void {
  useBench.setState({ theme })
  localStorage.setItem(THEME, theme)
}

/** Draws so much over the sheets, and remembers it on this machine. */
export function showOnSheet(shows: Shows): void {
  useBench.setState({ shows })
  localStorage.setItem(SHOWN, shows)
}

/** Takes up what was remembered; called once, at the start. */
export function recallSettings(): void {
  const shows = SHOWS.find((one) => one === localStorage.getItem(SHOWN))
  if (shows !== undefined) useBench.setState({ shows })
  const theme = localStorage.getItem(THEME)
  if (theme === 'light' || theme === 'dark') useBench.setState({ theme })
}
