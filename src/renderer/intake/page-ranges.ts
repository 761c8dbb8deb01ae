import { reason, type WindowReason } from '../words/window-words.ts'

/** Pages as people write them, `1-3, 5`: in order, each once. */
export function rangesOf(pages: Iterable<number>): string {
  const runs: [number, number][] = []
  for (const page of [...new Set(pages)].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last !== undefined && page === last[1] + 1) last[1] = page
    else runs.push([page, page])
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ')
}

/**
 * Reads pages as people write them: `1-3, 5`, `2 4`, `7-`.
 * @param most the last page that there is
 */
export function pagesIn(text: string, most: number): { pages: number[] } | { problem: WindowReason } {
  const pages = new Set<number>()
  const parts = text.replace(/\s*[-–—]\s*/g, '-').split(/[\s,;]+/)
  for (const part of parts.filter((one) => one !== '')) {
    const [, first = '', dash, last = ''] = /^(\d*)(-?)(\d*)$/.exec(part) ?? []
    if (first === '' && last === '') return { problem: reason('intake.no-page', { text: part }) }
    const from = first === '' ? 1 : Number(first)
    const to = dash === '' ? from : last === '' ? most : Number(last)
    const beyond = [from, to].find((page) => page < 1 || page > most)
    if (beyond !== undefined) return { problem: reason('intake.beyond-last', { page: beyond, last: most }) }
    if (to < from) return { problem: reason('intake.backwards', { text: part, from, to }) }
    for (let page = from; page <= to; page++) pages.add(page)
  }
  return { pages: [...pages].sort((a, b) => a - b) }
}
