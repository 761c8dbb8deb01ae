/** What is chosen: its marks stand out on the sheet, its card or entry is open. */
export type Selection =
  | { kind: 'dimension'; name: string }
  | { kind: 'view'; id: string }
  | { kind: 'reference'; view: string; id: string }
  | { kind: 'mark'; id: string }
  | { kind: 'note'; id: string }
  /** Something that was found to be read on a sheet, by its number there. */
  | { kind: 'found figure'; sheet: string; id: number }
