/** No list of pages names more. */
const MOST = 10_000

/** Pages named as `1-3,5`, each once, in the order given; undefined when the text names none. */
export function pageList(text: string): number[] | undefined {
  const pages = new Set<number>()
  for (const part of text.split(',')) {
    const [, from, to] = /^\s*([1-9]\d{0,5})(?:\s*-\s*([1-9]\d{0,5}))?\s*$/.exec(part) ?? []
    if (from === undefined) return undefined
    const last = Number(to ?? from)
    if (last < Number(from)) return undefined
    for (let page = Number(from); page <= last; page++) {
      pages.add(page)
      if (pages.size > MOST) return undefined
    }
  }
  return [...pages]
}
