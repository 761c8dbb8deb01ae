import { choose, nextAfter, putDown } from '../../bench/choose.ts'
import type { Selection } from '../../bench/selection.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import type { Picks } from '../../picking/picks.ts'

/** Puts the tool down after what was picked with it was kept, and shows what came of it. */
export function showKept(picks: Picks, selection: Selection): void {
  nextAfter(picks, { kind: 'look' })
  choose(selection)
  toTheSheet()
}

/** Puts the tool down with nothing kept. */
export function abandonTool(): void {
  putDown()
  toTheSheet()
}
