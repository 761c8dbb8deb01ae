type Path = readonly (string | number)[]

/** A deep copy of a JSON value with one node set, or taken away when the value is undefined. */
export function withNode(json: unknown, path: Path, value: unknown): unknown {
  const [head, ...rest] = path
  if (head === undefined) return value
  const copy = (Array.isArray(json) ? [...json] : { ...(json as object) }) as Record<string | number, unknown>
  if (rest.length > 0) copy[head] = withNode(copy[head], rest, value)
  else if (value === undefined && Array.isArray(copy)) copy.splice(Number(head), 1)
  else if (value === undefined) delete copy[head]
  else Object.defineProperty(copy, head, { value, writable: true, enumerable: true, configurable: true })
  return copy
}

/** The paths of all nodes of a JSON value, the whole first. */
export function nodes(json: unknown, path: Path = []): Path[] {
  if (typeof json !== 'object' || json === null) return [path]
  const keys = Array.isArray(json) ? json.map((_, i) => i) : Object.keys(json)
  return [
    path,
    ...keys.flatMap((key) => nodes((json as Record<string | number, unknown>)[key], [...path, key])),
  ]
}
