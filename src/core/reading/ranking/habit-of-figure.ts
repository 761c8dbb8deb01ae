import type { LatticeFigure } from '../readings.ts'
import { habitOfText } from './habit-of-text.ts'
import type { SheetHabit } from './sheet-habit.ts'

/** How likely a figure of this sheet is written so, before anything is seen of it: the mean over the texts that it may be. */
export function habitOfFigure({ texts, figure, probability }: LatticeFigure, habit: SheetHabit): number {
  const sum = texts.reduce((total, one) => total + one.probability * habitOfText(one.text, figure, habit), 0)
  return sum / probability
}
