const UNDATED = 'undated'

const two = (value: number): string => String(value).padStart(2, '0')

/** A moment by this machine's clock, to the minute: `2026-03-09 10:05`; what is no moment stays as it is. */
export function localMoment(at: string | undefined): string {
  if (at === undefined) return UNDATED
  const date = new Date(at)
  if (Number.isNaN(date.valueOf())) return at
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
  return `${day} ${two(date.getHours())}:${two(date.getMinutes())}`
}
