import { makeThen } from '../../bench/edits.ts'

/** Puts a sheet at another place of the set, from 0; one that is there already stays. */
export function moveSheet(id: string, to: number): void {
  void makeThen(({ sheets }) => {
    const from = sheets.findIndex((sheet) => sheet.id === id)
    const index = Math.min(Math.max(0, to), sheets.length - 1)
    return from === -1 || from === index ? null : { edit: { do: 'move-sheet', id, index } }
  })
}
