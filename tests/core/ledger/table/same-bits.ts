/** Where two results are not the same to the last bit, with what stands there; null where they are. */
export function differsAt(a: unknown, b: unknown, path = ''): string | null {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return Object.is(a, b) ? null : `${path}: ${String(a)} and ${String(b)}`
  }
  const [left, right] = [Object.keys(a), Object.keys(b)]
  if (left.join() !== right.join()) return `${path}: fields ${left} and ${right}`
  for (const key of left) {
    const [one, other] = [(a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]]
    const found = differsAt(one, other, `${path}.${key}`)
    if (found !== null) return found
  }
  return null
}
