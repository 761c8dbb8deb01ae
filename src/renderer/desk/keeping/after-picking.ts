import { choose, nextAfter, putDown, setPicks } from '../../bench/choose.ts'
import type { Selection } from '../../bench/selection.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { noPicks, type Picks } from '../../picking/picks.ts'

/** Shows what came of picks that were kept. The tool stays in hand for the next ones, until it is put down. */
export function showKept(picks: Picks, selection: Selection): void {
  nextAfter(picks, picks.tool)
  choose(selection)
  toTheSheet()
}

/** The same of what is done once: the tool is put down. */
export function showDone(picks: Picks, selection: Selection): void {
  nextAfter(picks, { kind: 'look' })
  choose(selection)
  toTheSheet()
}

/** Picks anew with the tool that is in hand, and as it was taken up: nothing is kept. */
export function pickAnew(picks: Picks): void {
  setPicks(noPicks(picks.tool))
  toTheSheet()
}

/** Puts the tool down with nothing kept. */
export function abandonTool(): void {
  putDown()
  toTheSheet()
}
