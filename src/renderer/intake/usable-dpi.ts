/** Dots per inch as they are written; undefined when nothing is, null when it is no number above nothing. */
export function usableDpi(text: string): number | undefined | null {
  if (text.trim() === '') return undefined
  const dpi = Number(text.trim().replace(',', '.'))
  return Number.isFinite(dpi) && dpi > 0 ? dpi : null
}
