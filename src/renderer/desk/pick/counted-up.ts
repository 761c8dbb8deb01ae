/** The last number that stands by itself in a name. */
const LAST_NUMBER = /(\d+)(?!.*\d)/

/**
 * What the next of several alike is called: `Hole 3` after `Hole 2`, `Hole 2` after `Hole`, the first number that none is
 * called by yet.
 * @param taken whether something is called so already
 */
export function countedUp(label: string, taken: (label: string) => boolean): string {
  const before = label.trim()
  if (before === '') return ''
  const number = LAST_NUMBER.exec(before)?.[1]
  for (let next = number === undefined ? 2 : Number(number) + 1; ; next++) {
    const counted =
      number === undefined
        ? `${before} ${next}`
        : before.replace(LAST_NUMBER, String(next).padStart(number.length, '0'))
    if (!taken(counted)) return counted
  }
}
