function named(value: unknown): string {
  if (typeof value !== 'object' || value === null) return ''
  for (const key of ['id', 'name'] as const) {
    const name: unknown = (value as Record<string, unknown>)[key]
    if (typeof name === 'string' && name !== '' && name.length <= 80) return ` ${JSON.stringify(name)}`
  }
  return ''
}

/**
 * Where something stands in a document, in words: items with their ids, then the field.
 * `['marks', 3, 'sigma']` is `marks[3] "M4": sigma`, and `[]` is an empty string.
 *
 * @param whole the document, from which the ids come
 */
export function place(whole: unknown, path: readonly PropertyKey[]): string {
  const items: string[] = []
  let field = ''
  let value: unknown = whole
  for (const key of path) {
    value =
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined
    if (typeof key === 'number') field += `[${key}]`
    else field += field === '' ? String(key) : `.${String(key)}`
    // Items stand in lists, and in an edit under `item`.
    const name = typeof key === 'number' || key === 'item' ? named(value) : ''
    if (name === '') continue
    items.push(field + name)
    field = ''
  }
  return [items.join(', '), field].filter((part) => part !== '').join(': ')
}
