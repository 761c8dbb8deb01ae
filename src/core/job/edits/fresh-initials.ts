/** The initials of a name, or where they are no id or taken, the first free number: AR, P1. */
export function freshInitials(name: string, taken: ReadonlySet<string>): string {
  const initials = name
    .split(/[^\p{L}\p{N}]+/u)
    .map((word) => [...word][0] ?? '')
    .join('')
    .toUpperCase()
  if (initials.length > 1 && !taken.has(initials)) return initials
  for (let number = 1; ; number++) if (!taken.has(`P${number}`)) return `P${number}`
}
